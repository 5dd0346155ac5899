package job

// uses checks what the floors are for.
func (k *checker) uses() {}
