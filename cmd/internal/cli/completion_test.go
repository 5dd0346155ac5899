package cli

import (
	"strings"
	"testing"
)

// The help on completion shows how it is used, and its scripts go where all
// results go.
func TestCompletionIsExplained(t *testing.T) {
	for args, want := range map[string]string{
		"help completion": "source <(tentwright completion bash)",
		"completion bash": "# bash completion V2 for tentwright",
	} {
		a, out, errs := testApp()
		root := newRoot(a)
		a.explainCompletion(root)
		if code := a.run(root, strings.Fields(args)); code != Done {
			t.Errorf("%s: exit code %d: %s", args, code, errs)
		}
		if !strings.Contains(out.String(), want) {
			t.Errorf("%s: %q was expected in\n%s", args, want, out)
		}
	}
}
