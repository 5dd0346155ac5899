package job

// wind checks the terrain and the ground at each side.
func (k *checker) wind() {}
