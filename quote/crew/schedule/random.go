package schedule

import "math/bits"

// random is splitmix64 (Steele, Lea and Flood 2014): small, fast, and the
// same on every machine.
type random uint64

func (r *random) next() uint64 {
	*r += 0x9e3779b97f4a7c15
	z := uint64(*r)
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// below returns a number from 0 to n-1.
func (r *random) below(n int) int {
	hi, _ := bits.Mul64(r.next(), uint64(n))
	return int(hi)
}

// chance is true in so many of 1024 cases.
func (r *random) chance(of1024 int) bool { return int(r.next()>>54) < of1024 }
