package xlsx

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"fmt"
	"io"
	"io/fs"
	"slices"
	"time"
)

// epoch is the time of every part: the earliest a zip entry can state. The
// date of the quote stands in the document properties.
var epoch = time.Date(1980, time.January, 1, 0, 0, 0, 0, time.UTC)

// packer collects the parts of a file and writes them in one fixed order with
// one fixed time, so that the same book gives the same bytes.
type packer struct {
	out    io.Writer
	polish func(name string, data []byte) []byte // last touch to a part
	parts  []part
}

// part is one file inside the file.
type part struct {
	name string
	data *bytes.Buffer
}

// Create starts a part; its bytes are kept until Close.
func (p *packer) Create(name string) (io.Writer, error) {
	data := new(bytes.Buffer)
	p.parts = append(p.parts, part{name, data})
	return data, nil
}

// AddFS is not used by a workbook and refuses.
func (p *packer) AddFS(fs.FS) error { return fmt.Errorf("a workbook holds no folder of files") }

// Close writes the parts, the list of content types first.
func (p *packer) Close() error {
	slices.SortFunc(p.parts, func(a, b part) int {
		if (a.name == contentTypes) != (b.name == contentTypes) {
			if a.name == contentTypes {
				return -1
			}
			return 1
		}
		return bytes.Compare([]byte(a.name), []byte(b.name))
	})
	z := zip.NewWriter(p.out)
	// One compressor serves all parts, one after the other.
	deflate, err := flate.NewWriter(nil, flate.DefaultCompression)
	if err != nil {
		return err
	}
	z.RegisterCompressor(zip.Deflate, func(w io.Writer) (io.WriteCloser, error) {
		deflate.Reset(w)
		return deflate, nil
	})
	for _, q := range p.parts {
		w, err := z.CreateHeader(&zip.FileHeader{Name: q.name, Method: zip.Deflate, Modified: epoch})
		if err != nil {
			return err
		}
		if _, err := w.Write(p.polish(q.name, q.data.Bytes())); err != nil {
			return err
		}
	}
	return z.Close()
}
