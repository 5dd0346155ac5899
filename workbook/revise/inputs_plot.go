package revise

// plot is where the tents stand.
func (l *inputList) plot() {}
