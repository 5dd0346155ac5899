package job

// power checks heat and power.
func (k *checker) power() {}
