package unit

import (
	"fmt"
	"strings"
)

// Size is the length, width and height of a box, each above zero once read.
type Size struct{ L, W, H Length }

var sizeForm = form{"a size", `"10 ft x 12 in x 8 in" or "3 m x 30 cm x 20 cm"`}

// ParseSize reads three lengths with "x" between them, in the order length,
// width, height. Other counts of them and lengths of zero are errors.
func ParseSize(s string) (Size, error) {
	parts := strings.Split(strings.NewReplacer("X", "x", "×", "x").Replace(s), "x")
	if len(parts) != 3 {
		return Size{}, sizeForm.bad(s, "is not three lengths")
	}
	var sides [3]Length
	for i, part := range parts {
		side, err := ParseLength(part)
		if err != nil {
			return Size{}, fmt.Errorf("%w, in a size of three lengths", err)
		}
		if side == 0 {
			return Size{}, sizeForm.bad(s, "has a side of zero")
		}
		sides[i] = side
	}
	return Size{sides[0], sides[1], sides[2]}, nil
}

// ParseText sets z from a text as [ParseSize] reads it.
func (z *Size) ParseText(s string) (err error) {
	*z, err = ParseSize(s)
	return err
}

// MarshalText is a text that [ParseSize] reads back exactly. A size with a
// side of zero or below has none.
func (z Size) MarshalText() ([]byte, error) {
	var parts [3]string
	for i, side := range []Length{z.L, z.W, z.H} {
		if side <= 0 {
			return nil, fmt.Errorf("a size with a side of %s cannot be written", side.metric(6))
		}
		text, err := side.MarshalText()
		if err != nil {
			return nil, err
		}
		parts[i] = string(text)
	}
	return []byte(strings.Join(parts[:], " x ")), nil
}

// In is the size for people, each side as [Length.In] writes it.
func (z Size) In(sys System) string {
	return z.L.In(sys) + " x " + z.W.In(sys) + " x " + z.H.In(sys)
}

// Volume is the volume of the box.
func (z Size) Volume() Volume { return VolumeOf(z.L, z.W, z.H) }

// Longest is the longest of the three sides.
func (z Size) Longest() Length { return max(z.L, z.W, z.H) }
