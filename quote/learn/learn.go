// Package learn proposes new minutes for labour rules from the hours that past
// jobs took.
package learn
