package revise

// power is heat and current.
func (l *inputList) power() {}
