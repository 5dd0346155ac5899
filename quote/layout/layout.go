// Package layout places the tents of a job on the plot and finds what is in the
// way.
package layout

import (
	"tentwright/catalog"
	"tentwright/quote/job"
	"tentwright/quote/tent"
)

// Plan is the plot with all that stands on it.
type Plan struct{}

// Build places the tents; nil for a job without any.
func Build(c *catalog.Catalog, j *job.Job, tents []tent.Tent) *Plan { return nil }
