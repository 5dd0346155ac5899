// Package record keeps what a workbook was made from as text in its cells: the
// job, and every file of the shop as it was. Any spreadsheet program keeps
// such cells, so a workbook that comes back by mail is enough to quote again.
//
// The first text is the SHA-256 of an ordinary zip archive, in hexadecimal; the
// others are that archive in base64 (RFC 4648), cut into pieces that fit a cell.
package record

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"tentwright/catalog"
)

// Record is a job and the shop that it was quoted in.
type Record struct {
	Job  []byte // a job file
	Shop catalog.Shop
}

// Names within the archive.
const (
	jobName = "job.yaml"
	shopDir = "shop/"
)

// piece is how many characters go into one cell, of 32,767 that fit.
const piece = 30000

// Limits of what is unpacked, far above what shops have.
const (
	maxFiles = 200
	maxBytes = 64 << 20
)

// Pack turns a record into the texts of cells. The same record gives the same
// texts.
func Pack(r *Record) ([]string, error) {
	var out bytes.Buffer
	z := zip.NewWriter(&out)
	// Fast rather than small: the archive is packed again with its workbook. One
	// compressor does all files, for each takes a megabyte.
	shared, err := flate.NewWriter(nil, flate.BestSpeed)
	if err != nil {
		return nil, err
	}
	z.RegisterCompressor(zip.Deflate, func(w io.Writer) (io.WriteCloser, error) {
		shared.Reset(w)
		return shared, nil
	})
	add := func(name string, data []byte) error {
		w, err := z.CreateHeader(&zip.FileHeader{Name: name, Method: zip.Deflate})
		if err != nil {
			return err
		}
		_, err = w.Write(data)
		return err
	}
	if err := add(jobName, r.Job); err != nil {
		return nil, err
	}
	for _, name := range slices.Sorted(maps.Keys(r.Shop)) {
		if err := add(shopDir+name, r.Shop[name]); err != nil {
			return nil, err
		}
	}
	if err := z.Close(); err != nil {
		return nil, err
	}
	text := base64.StdEncoding.EncodeToString(out.Bytes())
	sum := sha256.Sum256(out.Bytes())
	pieces := []string{hex.EncodeToString(sum[:])}
	for len(text) > piece {
		pieces, text = append(pieces, text[:piece]), text[piece:]
	}
	return append(pieces, text), nil
}

// Unpack reads the texts of cells back. It errs where a piece is missing, cut
// short or changed.
func Unpack(pieces []string) (*Record, error) {
	if len(pieces) < 2 {
		return nil, errors.New("its text is missing")
	}
	data, err := base64.StdEncoding.DecodeString(strings.Join(pieces[1:], ""))
	if sum := sha256.Sum256(data); err != nil || hex.EncodeToString(sum[:]) != pieces[0] {
		return nil, errors.New("a piece of its text is missing or was changed")
	}
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, errors.New("its text is no archive")
	}
	if len(z.File) > maxFiles {
		return nil, fmt.Errorf("it holds %d files; at most %d were expected", len(z.File), maxFiles)
	}
	r := &Record{Shop: catalog.Shop{}}
	left := int64(maxBytes)
	for _, f := range z.File {
		data, err := unpack(f, left)
		if err != nil {
			return nil, err
		}
		left -= int64(len(data))
		if f.Name == jobName {
			r.Job = data
		} else if name, ok := strings.CutPrefix(f.Name, shopDir); ok {
			r.Shop[name] = data
		}
	}
	if r.Job == nil {
		return nil, errors.New("it holds no job")
	}
	return r, nil
}

// unpack reads one file of at most so many bytes.
func unpack(f *zip.File, most int64) ([]byte, error) {
	file, err := f.Open()
	if err != nil {
		return nil, fmt.Errorf("%s in it cannot be read", f.Name)
	}
	defer file.Close()
	data, err := io.ReadAll(io.LimitReader(file, most+1))
	switch {
	case err != nil:
		return nil, fmt.Errorf("%s in it is damaged", f.Name)
	case int64(len(data)) > most:
		return nil, fmt.Errorf("it holds more than %d bytes", maxBytes)
	}
	return data, nil
}
