package cli

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

// output is a file to be written.
type output struct {
	path string
	data []byte
}

// bookBytes is the file of a book.
func bookBytes(book *sheet.Book) ([]byte, error) { return bookBytesWith(book, xlsx.Foreign{}) }

// bookBytesWith is the file of a book with sheets of another behind its own. That
// it cannot be made is never the user's fault.
func bookBytesWith(book *sheet.Book, from xlsx.Foreign) ([]byte, error) {
	var data bytes.Buffer
	if err := xlsx.WriteWith(&data, book, from); err != nil {
		return nil, &failure{code: OwnFault, problem: "this is a fault of tentwright, not of your files: " + err.Error(),
			advice: "please report it with the command and the files that it reads"}
	}
	return data.Bytes(), nil
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
			if linked(other.path) == linked(o.path) {
				return misuse("give each its own name", "two files would be written to %q", o.path)
			}
		}
	}
	return moveAll(all)
}

// moveAll writes each file beside its place and, once all are complete, moves
// them there, so that at no moment half a file has its name. On failure those
// not yet moved stay as they were, and the others are named.
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
	var moved []string
	for i, o := range all {
		if err := os.Rename(temps[i], linked(o.path)); err != nil {
			advice := "what was there before is unchanged"
			if len(moved) > 0 {
				advice = "written before that: " + strings.Join(moved, ", ") + "; the rest is unchanged"
			}
			return fileError(advice, "%q cannot be written: %s", o.path, cause(err))
		}
		moved = append(moved, o.path)
	}
	return nil
}

// linked is the place that a path stands for: behind a symbolic link the file
// that it leads to, so that the link stays and its file is replaced.
func linked(path string) string {
	if to, err := filepath.EvalSymlinks(path); err == nil {
		return to
	}
	// Of a file that is to come, the folder may still be a link.
	if to, err := os.Readlink(path); err == nil {
		if !filepath.IsAbs(to) {
			to = filepath.Join(filepath.Dir(path), to)
		}
		path = to
	}
	if dir, err := filepath.EvalSymlinks(filepath.Dir(path)); err == nil {
		return filepath.Join(dir, filepath.Base(path))
	}
	return filepath.Clean(path)
}

// usualMode is that of a new file: a temporary file is for its owner only, but a
// quote is to be shared.
const usualMode fs.FileMode = 0o644

// wrote says which files were written.
func (a *app) wrote(files []output) {
	for _, file := range files {
		a.printf("wrote %s\n", file.path)
	}
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
// place, down to the disk, and returns its name. Who may read the file that is
// to be replaced may read the new one.
func writeBeside(o output) (string, error) {
	place, mode := linked(o.path), usualMode
	if info, err := os.Stat(place); err == nil {
		mode = info.Mode().Perm()
	}
	temp, err := os.CreateTemp(filepath.Dir(place), ".tentwright-*")
	if err != nil {
		return "", err
	}
	_, err = temp.Write(o.data)
	err = errors.Join(err, temp.Chmod(mode), temp.Sync(), temp.Close())
	if err != nil {
		os.Remove(temp.Name())
		return "", err
	}
	return temp.Name(), nil
}

// besideName is the default name of a workbook that is made from another.
func besideName(path, ending string) string {
	return fmt.Sprintf("%s-%s.xlsx", strings.TrimSuffix(path, filepath.Ext(path)), ending)
}
