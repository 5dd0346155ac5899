package cli

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"tentwright/catalog"
)

// suggestion offers values for what was typed so far of a flag, in the order
// of the shop's files. Each may have a description behind a tab.
type suggestion func(c *catalog.Catalog, typed string) []string

// completePhone offers the ids of the shop as values of the flags of a price by
// phone.
func (a *app) completePhone(cmd *cobra.Command, p *phone) {
	for flag, suggest := range map[string]suggestion{
		"tent": tentValues, "item": itemValues, "class": classValues, "loading": loadingValues,
		"site": siteValues, "tax-place": placeValues, "walls": p.wallValues,
	} {
		// The one error is a flag that the command lacks: an offer less, no fault.
		_ = cmd.RegisterFlagCompletionFunc(flag, a.fromShop(suggest))
	}
}

// fromShop makes suggestions from the shop that the command would use. Where it
// cannot be read there are none: a half-typed line is no place for messages.
func (a *app) fromShop(suggest suggestion) cobra.CompletionFunc {
	return func(_ *cobra.Command, _ []string, typed string) ([]string, cobra.ShellCompDirective) {
		keep := cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveKeepOrder
		s, err := a.findShop(".")
		if err != nil || s.load() != nil {
			return nil, keep
		}
		all := slices.DeleteFunc(suggest(s.catalog, typed), func(value string) bool { return !strings.HasPrefix(value, typed) })
		// More follows behind a colon or an equals sign, without a space.
		if slices.ContainsFunc(all, func(value string) bool {
			word, _, _ := strings.Cut(value, "\t")
			return strings.HasSuffix(word, ":") || strings.HasSuffix(word, "=")
		}) {
			keep |= cobra.ShellCompDirectiveNoSpace
		}
		return all, keep
	}
}

// tentValues is the families, and once one is typed its sizes.
func tentValues(c *catalog.Catalog, typed string) []string {
	var all []string
	for i := range c.Families {
		f := &c.Families[i]
		if !strings.Contains(typed, ":") {
			all = append(all, cobra.CompletionWithDesc(f.ID+":", f.Name))
			continue
		}
		for _, size := range f.Sizes {
			all = append(all, cobra.CompletionWithDesc(f.ID+":"+size.ID, f.Name+" "+size.ID))
		}
	}
	return all
}

// itemValues is the items that are ordered by id; their quantity follows.
func itemValues(c *catalog.Catalog, _ string) []string {
	var all []string
	for i := range c.Items {
		if it := &c.Items[i]; !it.Geometry {
			all = append(all, cobra.CompletionWithDesc(it.ID+"=", it.Name))
		}
	}
	return all
}

func classValues(c *catalog.Catalog, _ string) []string {
	var all []string
	for _, class := range c.Rates.Classes {
		all = append(all, cobra.CompletionWithDesc(class.ID, class.Name))
	}
	return all
}

func loadingValues(c *catalog.Catalog, _ string) []string {
	var all []string
	for _, loading := range c.Rates.Loadings {
		all = append(all, cobra.CompletionWithDesc(loading.ID, loading.Name))
	}
	return all
}

// placeValues is the places that a tax names.
func placeValues(c *catalog.Catalog, _ string) []string {
	var all []string
	for _, tax := range c.Rates.Taxes {
		for _, place := range tax.Places {
			if !slices.Contains(all, place) {
				all = append(all, place)
			}
		}
	}
	return all
}

// siteValues is the factors, and once one is typed its options.
func siteValues(c *catalog.Catalog, typed string) []string {
	var all []string
	for _, factor := range c.Site {
		if !strings.Contains(typed, "=") {
			all = append(all, cobra.CompletionWithDesc(factor.ID+"=", factor.Name))
			continue
		}
		for _, option := range factor.Options {
			all = append(all, cobra.CompletionWithDesc(factor.ID+"="+option.ID, option.Name))
		}
	}
	return all
}

// wallValues is the kinds of wall that every tent on the line can have, since
// one kind closes them all.
func (p *phone) wallValues(c *catalog.Catalog, _ string) []string {
	var all []string
	for i := range c.Families {
		for _, wall := range c.Families[i].Walls {
			if !slices.Contains(all, wall.Kind) {
				all = append(all, wall.Kind)
			}
		}
	}
	lacking := func(kind string) bool {
		return slices.ContainsFunc(p.tents, func(text string) bool {
			id, _, _ := strings.Cut(text, ":")
			f := c.Family(id)
			return f != nil && !slices.ContainsFunc(f.Walls, func(w catalog.WallSpec) bool { return w.Kind == kind })
		})
	}
	return append(slices.DeleteFunc(all, lacking), "open")
}

// explainCompletion gives the command that prints completion scripts its
// example. That command is made when the program runs, and keeps the output
// that it finds then: both are brought forward.
func (a *app) explainCompletion(root *cobra.Command) {
	root.SetOut(a.out)
	root.InitDefaultCompletionCmd()
	if cmd := child(root, "completion"); cmd != nil {
		cmd.Example = `  source <(tentwright completion bash)
  tentwright completion fish > ~/.config/fish/completions/tentwright.fish
  tentwright completion powershell | Out-String | Invoke-Expression`
	}
}
