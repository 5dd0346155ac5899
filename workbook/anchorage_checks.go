package workbook

import "tentwright/quote"

// anchorFormulas gives the formulas of both sides of a check that this sheet can
// make again; false for any other check.
func (l *layout) anchorFormulas(kind, rest string) (is, limit string, ok bool) {
	switch kind {
	case "anchor":
		// As percentOf of package quote rounds: up, above the grain of reckoning.
		use := "ROUNDUP(ROUND(100000000*" + find("roof_use", "roof_tent", quoted(rest)) + ",0)/10000,0)/100"
		return "IF(" + find("roof_held", "roof_tent", quoted(rest)) + "=" + quoted(legUnknown) + ",MAX(" + itoa(quote.NotKnown) + "," + use + ")," + use + ")", "", true
	case "anchor legs":
		return "COUNTIF(leg_state," + quoted(legUnknown) + ")", "", true
	case "anchor gust":
		return "wind_speed", "wind_limit", true
	case "gust of shop":
		return "wind_speed", "", true
	case "wind actions":
		return itoa(l.q.Anchor.Unlisted()) + "+COUNTIF(action_state," + quoted(actionOpen) + ")+COUNTIF(action_state," + quoted(actionLate) + ")", "", true
	}
	return "", "", false
}
