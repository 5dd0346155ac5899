// Package spread says how sure a finish is: it draws the minutes of each task
// between what is optimistic and what is pessimistic, and runs the plan again.
package spread
