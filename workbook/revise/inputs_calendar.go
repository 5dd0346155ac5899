package revise

// calendar is the offsets of dates.
func (l *inputList) calendar() {}
