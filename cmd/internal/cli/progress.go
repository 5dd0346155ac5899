package cli

import (
	"os"

	"github.com/schollz/progressbar/v3"
)

// fewSteps are over before anyone looks for progress.
const fewSteps = 8

// progress shows on a terminal how far something long has come: step counts one
// more, from any goroutine, and done takes the bar away. Elsewhere, as in a log,
// nothing is shown, so that the output is the same each time.
func (s speaker) progress(steps int, what string) (step, done func()) {
	f, ok := s.errs.(*os.File)
	if ok {
		info, err := f.Stat()
		ok = err == nil && info.Mode()&os.ModeCharDevice != 0
	}
	if !ok || steps <= fewSteps {
		return func() {}, func() {}
	}
	bar := progressbar.NewOptions(steps, progressbar.OptionSetWriter(f), progressbar.OptionSetDescription(what),
		progressbar.OptionShowCount(), progressbar.OptionSetWidth(30), progressbar.OptionClearOnFinish())
	// A bar that cannot be drawn is no fault of the work.
	return func() { _ = bar.Add(1) }, func() { _ = bar.Finish() }
}
