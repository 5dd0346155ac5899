package job

// plot checks the plot, its obstacles and the places of the tents.
func (k *checker) plot() {}
