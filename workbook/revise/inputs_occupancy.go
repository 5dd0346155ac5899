package revise

// occupancy is what the floors are for.
func (l *inputList) occupancy() {}
