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
	"path"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
)

// epoch is the date of every part, 1 January 1980 in the form of the zip
// format: the earliest that an entry can state. The date of the quote stands in
// the document properties.
const epoch = 1<<5 | 1

// level of compression: an eighth larger than the usual one, in less than half
// the time.
const level = 2

// partHeads is room for the two heads that the zip format gives each part.
const partHeads = 256

// packer collects the parts of a file and writes them in one fixed order with
// one fixed time, so that the same book gives the same bytes.
type packer struct {
	out       io.Writer
	finishers map[string]finisher // by the names of the parts
	parts     []part
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
	if b, ok := p.out.(*bytes.Buffer); ok {
		// In one piece, so that the file is not copied as it grows.
		size := 0
		for i := range packed {
			size += len(packed[i].data) + partHeads
		}
		b.Grow(size)
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

// press is what one worker finishes and compresses parts with. It is kept for
// the next file: a compressor takes longer to make than to use on a small part.
type press struct {
	room   []byte       // for a finished part
	packed bytes.Buffer // for its compressed form
	w      *flate.Writer
}

// presses are those not in use.
var presses sync.Pool

// newPress takes a press that is free, or makes one.
func newPress() (*press, error) {
	if p, ok := presses.Get().(*press); ok {
		return p, nil
	}
	w, err := flate.NewWriter(nil, level)
	return &press{w: w}, err
}

// deflate finishes and compresses the parts, several at once: it is the larger
// part of the time that a workbook takes, and someone waits for it on the phone.
func (p *packer) deflate() ([]packedPart, error) {
	packed := make([]packedPart, len(p.parts))
	faults := make([]error, runtime.GOMAXPROCS(0))
	var next atomic.Int64
	var all sync.WaitGroup
	for worker := range faults {
		all.Go(func() {
			press, err := newPress()
			for i := int(next.Add(1)) - 1; err == nil && i < len(packed); i = int(next.Add(1)) - 1 {
				packed[i], err = press.pack(p.parts[i], p.finishers[p.parts[i].name])
			}
			if faults[worker] = err; err == nil {
				presses.Put(press)
			}
		})
	}
	all.Wait()
	return packed, errors.Join(faults...)
}

// pack finishes and compresses one part and writes its head, with sizes and
// checksum known beforehand so that nothing follows the data.
func (p *press) pack(from part, finish finisher) (packedPart, error) {
	data := from.data.Bytes()
	if finish != nil {
		var err error
		if data, err = finish(p.room[:0], data); err != nil {
			return packedPart{}, err
		}
		p.room = data
	}
	head := zip.FileHeader{Name: from.name, Method: zip.Deflate, ModifiedDate: epoch, CRC32: crc32.ChecksumIEEE(data), UncompressedSize64: uint64(len(data))}
	if isPicture(from.name) {
		head.Method, head.CompressedSize64 = zip.Store, uint64(len(data))
		return packedPart{head, bytes.Clone(data)}, nil
	}
	p.packed.Reset()
	p.w.Reset(&p.packed)
	if _, err := p.w.Write(data); err != nil {
		return packedPart{}, err
	}
	if err := p.w.Close(); err != nil {
		return packedPart{}, err
	}
	out := bytes.Clone(p.packed.Bytes())
	head.CompressedSize64 = uint64(len(out))
	return packedPart{head, out}, nil
}

// isPicture tells whether a part is compressed by its own format, so that to do
// so again takes time and saves nothing.
func isPicture(name string) bool {
	return slices.Contains([]string{".png", ".jpg", ".jpeg"}, strings.ToLower(path.Ext(name)))
}
