// Package draw draws a site plan to scale, as PNG and as SVG from one drawing.
package draw

import "tentwright/quote/layout"

// SVG is the plan as a scalable drawing.
func SVG(p *layout.Plan) ([]byte, error) { return nil, nil }

// PNG is the plan as a picture.
func PNG(p *layout.Plan) ([]byte, error) { return nil, nil }
