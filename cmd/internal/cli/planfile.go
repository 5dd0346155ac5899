package cli

import (
	"tentwright/quote"
	"tentwright/workbook/draw"
)

// planHelp is what the flag --plan does.
const planHelp = "write the site plan as a drawing that can be made larger to `FILE.svg`"

// planNamed tells whether a site plan can have a name.
func planNamed(name string) error {
	if name != "" && !endsIn(name, ".svg") {
		return misuse("name a file ending in .svg", "--plan %q is not the name of a drawing", name)
	}
	return nil
}

// withPlan adds the drawing of the site plan, if one is wanted.
func withPlan(files []output, name string, q *quote.Quote) ([]output, error) {
	switch {
	case name == "":
		return files, nil
	case q.Plan == nil:
		return nil, misuse("leave --plan out, or put a tent into the job", "--plan: the job has no tents to draw")
	}
	data, err := draw.SVG(q.Plan)
	if err != nil {
		return nil, &failure{code: OwnFault, problem: "this is a fault of tentwright, not of your files: " + err.Error(),
			advice: "please report it with the command and the files that it reads"}
	}
	return append(files, output{name, data}), nil
}
