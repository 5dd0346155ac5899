package catalog

import (
	"bytes"
	"image"
	"image/jpeg"
	"image/png"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
)

// companyWith is the small shop whose letterhead names one more file.
func companyWith(t *testing.T, field, name string, file *fstest.MapFile) fstest.MapFS {
	t.Helper()
	company, err := os.ReadFile(filepath.Join(smallShop, "company.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	shop := smallWith(t, "company.yaml", append(company, "  "+field+": "+name+"\n"...))
	shop[name] = file
	return shop
}

func picture(t *testing.T, width, height int, asPNG bool) []byte {
	t.Helper()
	var out bytes.Buffer
	var err error
	if m := image.NewGray(image.Rect(0, 0, width, height)); asPNG {
		err = png.Encode(&out, m)
	} else {
		err = jpeg.Encode(&out, m, nil)
	}
	if err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// A logo is told by its own bytes, not by its name, and all of them are read.
func TestLogoMustBeAPicture(t *testing.T) {
	whole, photo := picture(t, 40, 30, true), picture(t, 40, 30, false)
	for _, tt := range []struct {
		what string
		data []byte
		mode fs.FileMode
		want string
	}{
		{"a PNG picture", whole, 0, ""},
		{"a JPEG picture", photo, 0, ""},
		{"another kind", []byte("GIF89a"), 0, "is neither a PNG nor a JPEG picture"},
		{"half a PNG picture", whole[:len(whole)/2], 0, "is a broken picture"},
		{"half a JPEG picture", photo[:len(photo)/2], 0, "is a broken picture"},
		{"only its first bytes", whole[:8], 0, "is a broken picture"},
		{"a wide picture", picture(t, 4001, 2, true), 0, "is a picture of 4001 x 2 points; at most 4000 a side"},
		{"a large file", append(whole, make([]byte, 2<<20)...), 0, "more than 2097152"},
		{"a pipe", nil, fs.ModeNamedPipe, "is no ordinary file"},
	} {
		c, list := Load("shop", companyWith(t, "logo", "logo.png", &fstest.MapFile{Data: tt.data, Mode: tt.mode}))
		switch {
		case tt.want == "" && c == nil:
			t.Errorf("%s is refused: %v", tt.what, list.Err())
		case tt.want != "" && (len(list) != 1 || list[0].Code != BadPicture || !strings.Contains(list[0].Message, tt.want)):
			t.Errorf("%s: got %v, want %q", tt.what, list, tt.want)
		}
	}
}

// Terms are printed, so they must be plain text that fits.
func TestTermsMustBePlainText(t *testing.T) {
	for text, want := range map[string]string{
		"Deposit\tholds\r\nthe date.\n": "",
		strings.Repeat("é", 16001):      "has 16001 characters; at most 16000",
		"caf\xe9":                       "is not UTF-8 text",
		"a\x07b":                        "control character U+0007",
	} {
		c, list := Load("shop", companyWith(t, "terms", "terms.txt", &fstest.MapFile{Data: []byte(text)}))
		if want == "" && c == nil || want != "" && (len(list) != 1 || list[0].Code != BadText || !strings.Contains(list[0].Message, want)) {
			t.Errorf("%.20q: got %v, want %q", text, list, want)
		}
	}
}

// A pipe in place of a file would be waited for without end.
func TestShopFileMustBeAFile(t *testing.T) {
	shop := smallWith(t, "", nil)
	shop["site.yaml"] = &fstest.MapFile{Mode: fs.ModeNamedPipe}
	if _, list := Load("shop", shop); len(list) != 1 || list[0].Code != FileMissing || !strings.Contains(list[0].Message, "is no ordinary file") {
		t.Errorf("got %v", list)
	}
}

// The prices stay the demonstration's until the letterhead is one's own; how
// its file is laid out does not count.
func TestDemoHoldsUntilTheLetterheadChanges(t *testing.T) {
	for _, tt := range []struct {
		from, to string
		want     bool
	}{
		{"company:", "# My own remark.\ncompany:", true},
		{"name: Fernhollow Tent Yard", `name:   "Fernhollow Tent Yard"`, true},
		{"paper: letter", "paper: a4", true},
		{"name: Fernhollow Tent Yard", "name: Marsh End Tents", false},
		{"14 Old Ropewalk Lane", "2 Mill Way", false},
		{"555-0142", "555-0143", false},
		{"office@fernhollow.example", "office@marsh-end.example", false},
	} {
		shop := demoCopy(t)
		data := bytes.Replace(shop["company.yaml"].Data, []byte(tt.from), []byte(tt.to), 1)
		shop["company.yaml"] = &fstest.MapFile{Data: data}
		if c, list := Load("shop", shop); c == nil || c.Demo != tt.want {
			t.Errorf("%q: want a demonstration: %v; %v", tt.to, tt.want, list.Err())
		}
	}
}
