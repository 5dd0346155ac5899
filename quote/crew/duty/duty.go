// Package duty holds drivers' days against the rule of driving hours.
package duty
