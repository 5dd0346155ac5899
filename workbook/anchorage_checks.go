package workbook

// anchorFormulas gives the formulas of both sides of a check that this sheet can
// make again; false for any other check.
func (l *layout) anchorFormulas(kind, rest string) (is, limit string, ok bool) {
	switch kind {
	case "anchor":
		return "ROUND(100*" + find("roof_use", "roof_tent", quoted(rest)) + ",2)", "", true
	case "anchor legs":
		return "COUNTIF(leg_state," + quoted(legUnknown) + ")", "", true
	case "anchor gust":
		return "wind_speed", "wind_limit", true
	}
	return "", "", false
}
