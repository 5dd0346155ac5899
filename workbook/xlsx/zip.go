package xlsx

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"errors"
	"fmt"
	"hash/crc32"
	"io"
	"io/fs"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"
)

// epoch is the date of every part, 1 January 1980 in the form of the zip
// format: the earliest that an entry can state. The date of the quote stands in
// the document properties.
const epoch = 1<<5 | 1

// level of compression: a little larger than the best, in half the time.
const level = 3

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
	packed, err := p.deflate()
	if err != nil {
		return err
	}
	z := zip.NewWriter(p.out)
	for i := range packed {
		w, err := z.CreateRaw(&packed[i].head)
		if err != nil {
			return err
		}
		if _, err := w.Write(packed[i].data); err != nil {
			return err
		}
	}
	return z.Close()
}

// packedPart is a part in compressed form.
type packedPart struct {
	head zip.FileHeader
	data []byte
}

// deflate compresses the parts, several at once: it is the larger part of the
// time that a workbook takes, and someone waits for it on the phone. Each
// worker keeps one compressor for all its parts.
func (p *packer) deflate() ([]packedPart, error) {
	packed := make([]packedPart, len(p.parts))
	faults := make([]error, runtime.GOMAXPROCS(0))
	var next atomic.Int64
	var all sync.WaitGroup
	for worker := range faults {
		all.Go(func() {
			w, err := flate.NewWriter(nil, level)
			for i := int(next.Add(1)) - 1; err == nil && i < len(packed); i = int(next.Add(1)) - 1 {
				packed[i], err = deflatePart(w, p.parts[i].name, p.polish(p.parts[i].name, p.parts[i].data.Bytes()))
			}
			faults[worker] = err
		})
	}
	all.Wait()
	return packed, errors.Join(faults...)
}

// deflatePart compresses one part and writes its head, with sizes and checksum
// known beforehand so that nothing follows the data.
func deflatePart(w *flate.Writer, name string, data []byte) (packedPart, error) {
	var out bytes.Buffer
	out.Grow(len(data) / 6)
	w.Reset(&out)
	if _, err := w.Write(data); err != nil {
		return packedPart{}, err
	}
	if err := w.Close(); err != nil {
		return packedPart{}, err
	}
	return packedPart{data: out.Bytes(), head: zip.FileHeader{Name: name, Method: zip.Deflate, ModifiedDate: epoch,
		CRC32: crc32.ChecksumIEEE(data), CompressedSize64: uint64(out.Len()), UncompressedSize64: uint64(len(data))}}, nil
}
