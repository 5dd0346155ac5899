package catalog

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"image/png"
	"io/fs"
	"strings"
	"unicode"
	"unicode/utf8"

	"tentwright/catalog/diag"
)

// Limits of what the letterhead names.
const (
	maxLogo  = 2 << 20 // bytes
	maxPixel = 4000    // a side
	maxTerms = 16000   // characters of a text, which becomes a cell or few
)

// attach reads the letterhead's picture and texts that company.yaml names.
func (c *Catalog) attach(fsys fs.FS, list *diag.List) {
	get := func(field, name, code string, most int64, bad func([]byte) string) []byte {
		if name == "" {
			return nil
		}
		data, why := readRegular(fsys, name, most)
		switch {
		case why == unread:
			code, why = FileMissing, "is not in the shop folder, or cannot be read"
		case why == "":
			why = bad(data)
		}
		if why != "" {
			list.Addf(c.Company.Where.Of(field), code, "file %q %s", name, why)
			return nil
		}
		c.Source[name] = data
		return data
	}
	c.Logo = get("logo", c.Company.Logo, BadPicture, maxLogo, badPicture)
	c.Terms = string(get("terms", c.Company.Terms, BadText, maxFile, badText))
	c.Payment = string(get("payment", c.Company.Payment, BadText, maxFile, badText))
}

// badText says why a text cannot be printed; "" when it can.
func badText(data []byte) string {
	if !utf8.Valid(data) {
		return "is not UTF-8 text; save it as UTF-8"
	}
	if n := utf8.RuneCount(data); n > maxTerms {
		return fmt.Sprintf("has %d characters; at most %d were expected", n, maxTerms)
	}
	if at := strings.IndexFunc(string(data), steers); at >= 0 {
		r, _ := utf8.DecodeRune(data[at:])
		return fmt.Sprintf("holds the control character %U; plain text was expected", r)
	}
	return ""
}

// steers tells control characters that are no part of a text file.
func steers(r rune) bool { return unicode.IsControl(r) && !strings.ContainsRune("\t\r\n", r) }

// badPicture says why a picture cannot stand on the letterhead; "" when it
// can. All of it is decoded: half a picture breaks the workbook's first page.
func badPicture(data []byte) string {
	size, decode := png.DecodeConfig, png.Decode
	switch pictureType(data) {
	case "":
		return "is neither a PNG nor a JPEG picture"
	case jpegEnding:
		size, decode = jpeg.DecodeConfig, jpeg.Decode
	}
	config, err := size(bytes.NewReader(data))
	switch {
	case err != nil:
		return "is a broken picture: " + err.Error()
	case config.Width > maxPixel || config.Height > maxPixel:
		return fmt.Sprintf("is a picture of %d x %d points; at most %d a side were expected", config.Width, config.Height, maxPixel)
	}
	var picture image.Image
	if picture, err = decode(bytes.NewReader(data)); err != nil {
		return "is a broken picture: " + err.Error()
	}
	if picture.Bounds().Empty() {
		return "is an empty picture"
	}
	return ""
}

// Endings of the kinds of picture.
const (
	pngEnding  = ".png"
	jpegEnding = ".jpg"
)

// LogoType is ".png" or ".jpg" by the picture's own first bytes, or empty.
func (c *Catalog) LogoType() string { return pictureType(c.Logo) }

func pictureType(data []byte) string {
	switch {
	case bytes.HasPrefix(data, []byte("\x89PNG\r\n\x1a\n")):
		return pngEnding
	case bytes.HasPrefix(data, []byte("\xff\xd8\xff")):
		return jpegEnding
	}
	return ""
}
