package revise

// anchors are the wind, what the anchors hold, and the wind actions.
func (l *inputList) anchors() {}
