package cli

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
)

// How the files with words about a dropped file end.
const (
	mendEnd   = " - what to mend.txt"
	resultEnd = " - result.txt"
)

// ownMark is the first line of the words about a file. By it they are known again.
func ownMark(path string) string {
	return "About " + filepath.Base(path) + ": tentwright wrote this text and replaces or removes it when that file is dropped again.\n"
}

// wordsName is where the words about a file stand, ending so.
func wordsName(path, ending string) string {
	path = filepath.Clean(path)
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return path + ending // what follows a dot in a folder's name says no kind
	}
	return strings.TrimSuffix(path, filepath.Ext(path)) + ending
}

// leave writes words beside the file that they are about, over those of before
// only, and says where.
func (a *app) leave(path, ending string, words []byte) {
	info, err := os.Stat(path)
	if err == nil && !info.IsDir() && !info.Mode().IsRegular() || strings.Trim(filepath.Base(path), "./\\") == "" || ofOurWords(path) {
		return
	}
	name := freeName(wordsName(path, ending))
	if err := moveAll([]output{{name, append([]byte(ownMark(path)+"\n"), words...)}}); err != nil {
		a.note("no file with these words was left: "+err.Error(), "")
		return
	}
	a.note("these words stand in "+name, "")
}

// tidy takes away the words about a file that stand there from a run before; what
// somebody else wrote under such a name stays.
func tidy(path string) {
	for _, ending := range []string{mendEnd, resultEnd} {
		wanted := wordsName(path, ending)
		for n := 1; ; n++ {
			name := nth(wanted, n)
			if _, err := os.Lstat(name); err != nil {
				break
			}
			if begins(name, ownMark(path)) {
				os.Remove(name)
			}
		}
	}
}

// begins tells whether an ordinary file begins with the words.
func begins(path, words string) bool {
	if info, err := os.Lstat(path); err != nil || !info.Mode().IsRegular() {
		return false
	}
	f, err := os.Open(path)
	if err != nil {
		return false
	}
	defer f.Close()
	head := make([]byte, len(words))
	_, err = io.ReadFull(f, head)
	return err == nil && string(head) == words
}

// ofOurWords tells whether a file is named like words about another.
func ofOurWords(path string) bool {
	return strings.HasSuffix(path, mendEnd) || strings.HasSuffix(path, resultEnd)
}

// freeName is a name that no file has yet: the one given, or with (2), (3) ...
func freeName(path string) string {
	for n := 1; ; n++ {
		name := nth(path, n)
		if _, err := os.Lstat(name); err != nil {
			return name
		}
	}
}

// nth is the n-th name to try for a file, from 1.
func nth(path string, n int) string {
	if n == 1 {
		return path
	}
	end := filepath.Ext(path)
	return fmt.Sprintf("%s (%d)%s", strings.TrimSuffix(path, end), n, end)
}
