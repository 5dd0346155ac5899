package catalog

import (
	"bytes"
	"io/fs"
	"time"
)

// Shop is the files of a shop folder in memory, by name. It is a file system of
// one flat folder, so that [Load] reads it like any other.
type Shop map[string][]byte

// Open opens a file by its name.
func (s Shop) Open(name string) (fs.File, error) {
	data, ok := s[name]
	if !ok {
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
	}
	return &shopFile{Reader: bytes.NewReader(data), name: name, size: int64(len(data))}, nil
}

// ReadFile gives a copy of a file's bytes.
func (s Shop) ReadFile(name string) ([]byte, error) {
	data, ok := s[name]
	if !ok {
		return nil, &fs.PathError{Op: "read", Path: name, Err: fs.ErrNotExist}
	}
	return bytes.Clone(data), nil
}

// shopFile is one open file, and what is known of it.
type shopFile struct {
	*bytes.Reader
	name string
	size int64
}

func (f *shopFile) Stat() (fs.FileInfo, error) { return f, nil }
func (f *shopFile) Close() error               { return nil }
func (f *shopFile) Name() string               { return f.name }
func (f *shopFile) Size() int64                { return f.size }
func (f *shopFile) Mode() fs.FileMode          { return 0o444 }
func (f *shopFile) ModTime() time.Time         { return time.Time{} } // not known
func (f *shopFile) IsDir() bool                { return false }
func (f *shopFile) Sys() any                   { return nil }
