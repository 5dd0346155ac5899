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
	return moveAll(all)
}

// moveAll writes each file beside its place and, once all are complete, moves
// them there, so that at no moment half a file has its name. On failure what
// was there stays.
func moveAll(all []output) error {
	temps := make([]string, 0, len(all))
	defer func() {
		for _, temp := range temps {
			os.Remove(temp) // one that was moved is no longer there
		}
	}()
	for _, o := range all {
		temp, err := writeBeside(o)
		if err != nil {
			return fileError("nothing was changed", "%q cannot be written: %s", o.path, cause(err))
		}
		temps = append(temps, temp)
	}
	for i, o := range all {
		if err := os.Rename(temps[i], o.path); err != nil {
			return fileError("what was there before is unchanged", "%q cannot be written: %s", o.path, cause(err))
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

// writeBeside writes the bytes to a temporary file in the folder of their
// place, down to the disk, and returns its name.
func writeBeside(o output) (string, error) {
	temp, err := os.CreateTemp(filepath.Dir(o.path), ".tentwright-*")
	if err != nil {
		return "", err
	}
	_, err = temp.Write(o.data)
	// A temporary file is for its owner only; a quote is to be shared.
	err = errors.Join(err, temp.Chmod(0o644), temp.Sync(), temp.Close())
	if err != nil {
		os.Remove(temp.Name())
		return "", err
	}
	return temp.Name(), nil
}
