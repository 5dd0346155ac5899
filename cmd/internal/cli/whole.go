package cli

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// output is a file to be written.
type output struct {
	path string
	data []byte
}

// writeAll writes files, each whole or not at all. All are looked at before
// the first is written: an existing one needs force, and none may be one of
// the inputs.
func writeAll(all []output, force bool, inputs []string) error {
	for i, o := range all {
		if err := mayWrite(o.path, force, inputs); err != nil {
			return err
		}
		for _, other := range all[:i] {
			if filepath.Clean(other.path) == filepath.Clean(o.path) {
				return misuse("give each its own name", "two files would be written to %q", o.path)
			}
		}
	}
	for _, o := range all {
		if err := writeWhole(o); err != nil {
			return err
		}
	}
	return nil
}

// mayWrite tells why a file must not be written; nil when it may.
func mayWrite(path string, force bool, inputs []string) error {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return fileError("", "%q cannot be written: %s", path, cause(err))
	case info.IsDir():
		return fileError("", "%q is a folder; the name of a file was expected", path)
	}
	for _, input := range inputs {
		if in, err := os.Stat(input); err == nil && os.SameFile(in, info) {
			return misuse("choose another name for what is written", "%q is the input; it is never written over", path)
		}
	}
	if !force {
		return fileError("give --force to replace it, or choose another name", "%q exists already", path)
	}
	return nil
}

// writeWhole writes a file beside its place and then moves it there, so that
// at no moment half a file has its name. On failure what was there stays.
func writeWhole(o output) (err error) {
	temp, err := os.CreateTemp(filepath.Dir(o.path), ".tentwright-*")
	if err != nil {
		return fileError("", "%q cannot be written: %s", o.path, cause(err))
	}
	defer func() {
		if err != nil {
			temp.Close()
			os.Remove(temp.Name())
			err = fileError("what was there before is unchanged", "%q cannot be written: %s", o.path, cause(err))
		}
	}()
	if _, err = temp.Write(o.data); err != nil {
		return err
	}
	// A temporary file is for its owner only; a quote is to be shared.
	if err = temp.Chmod(0o644); err != nil {
		return err
	}
	if err = temp.Sync(); err != nil {
		return err
	}
	if err = temp.Close(); err != nil {
		return err
	}
	return os.Rename(temp.Name(), o.path)
}
