package xlsx

import (
	"errors"
	"strings"
)

// maxDepth is how deep elements may nest; the format itself needs about ten.
const maxDepth = 200

// errMarkup is a part whose XML is broken; which part it is, is told where it
// is read.
var errMarkup = errors.New("broken XML")

// markup walks through one part. It knows as much of XML as the parts of a
// workbook use and is several times faster than a full reader, which counts
// with 20,000 cells. Names lose their prefixes, so that the two namespaces of
// the format and all prefixes are read alike.
type markup struct {
	doc  string
	at   int
	open []string // elements around the place, outermost first, with prefix

	name  string // of the element that started last
	attrs []attr // of that element
	bare  bool   // that element has no content: <c/>
	err   error
}

// attr is an attribute as it stands in the part, not decoded.
type attr struct{ name, value string }

// token is what the walk came to.
type token int

const (
	atEnd token = iota // of the part, or at a fault
	atStart
	atClose
	atText
)

// root goes to the outermost element and returns its name; "" at a fault.
func (m *markup) root() string {
	for {
		switch t, _ := m.next(); t {
		case atStart:
			return m.name
		case atEnd:
			m.fail()
			return ""
		}
	}
}

// children calls visit at the start of each element directly inside the one
// just started. What visit leaves of it is skipped.
func (m *markup) children(visit func()) {
	if m.bare {
		return
	}
	depth := len(m.open)
	for {
		switch t, _ := m.next(); t {
		case atEnd:
			return
		case atClose:
			if len(m.open) < depth {
				return
			}
		case atStart:
			visit()
			for len(m.open) > depth {
				if t, _ := m.next(); t == atEnd {
					return
				}
			}
		}
	}
}

// content is the text directly inside the element just started, up to its end.
func (m *markup) content() string {
	if m.bare {
		return ""
	}
	depth := len(m.open)
	var whole joined
	for {
		switch t, text := m.next(); t {
		case atEnd:
			return ""
		case atText:
			if len(m.open) == depth {
				whole.add(text)
			}
		case atClose:
			if len(m.open) < depth {
				return whole.text()
			}
		}
	}
}

// attr is the decoded value of an attribute of the element started last; ""
// when it is missing.
func (m *markup) attr(name string) string {
	for i := range m.attrs {
		if m.attrs[i].name == name {
			return m.decode(m.attrs[i].value)
		}
	}
	return ""
}

// on tells whether an attribute holds a truth that is set.
func (m *markup) on(name string) bool { return truth(m.attr(name)) }

// truth is how the format writes a truth.
func truth(s string) bool { return s == "1" || s == "true" || s == "on" }

// stop ends the walk for a reason other than broken XML; nil is none.
func (m *markup) stop(err error) {
	if err != nil && m.err == nil {
		m.err = err
		m.fail()
	}
}

// finish walks to the end of the part and tells the fault that was found. where
// is what the part holds.
func (m *markup) finish(where string) error {
	for t := atStart; t != atEnd; t, _ = m.next() {
	}
	var f *Fault
	switch {
	case m.err == nil:
		return nil
	case errors.As(m.err, &f):
		return f
	}
	return damaged(where)
}

// fail notes that the XML is broken and ends the walk.
func (m *markup) fail() (token, string) {
	if m.err == nil {
		m.err = errMarkup
	}
	m.at = len(m.doc)
	m.open = m.open[:0]
	return atEnd, ""
}

// next goes one step. The text belongs to atText and is decoded.
func (m *markup) next() (token, string) {
	m.bare = false
	for m.at < len(m.doc) {
		if m.doc[m.at] != '<' {
			end := strings.IndexByte(m.doc[m.at:], '<')
			if end < 0 {
				end = len(m.doc) - m.at
			}
			raw := m.doc[m.at : m.at+end]
			m.at += end
			return atText, m.decode(raw)
		}
		rest := m.doc[m.at:]
		switch {
		case strings.HasPrefix(rest, "</"):
			return m.closing(rest)
		case strings.HasPrefix(rest, "<?"):
			if !m.past("?>") {
				return m.fail()
			}
		case strings.HasPrefix(rest, "<!--"):
			if !m.past("-->") {
				return m.fail()
			}
		case strings.HasPrefix(rest, "<![CDATA["):
			if !m.past("]]>") {
				return m.fail()
			}
			text, _, _ := strings.Cut(rest[len("<![CDATA["):], "]]>")
			return atText, text
		case strings.HasPrefix(rest, "<!"):
			// A document type: no program writes one, and it could hold
			// texts that swell when they are put in.
			return m.fail()
		default:
			return m.starting()
		}
	}
	if len(m.open) > 0 {
		return m.fail()
	}
	return atEnd, ""
}

// past moves behind the next mark.
func (m *markup) past(mark string) bool {
	i := strings.Index(m.doc[m.at:], mark)
	if i < 0 {
		return false
	}
	m.at += i + len(mark)
	return true
}

// closing reads an end tag, which must belong to the innermost element.
func (m *markup) closing(rest string) (token, string) {
	end := strings.IndexByte(rest, '>')
	if end < 0 || len(m.open) == 0 {
		return m.fail()
	}
	name := rest[2:end]
	if name != m.open[len(m.open)-1] && strings.TrimRight(name, " \t\r\n") != m.open[len(m.open)-1] {
		return m.fail()
	}
	m.open = m.open[:len(m.open)-1]
	m.at += end + 1
	return atClose, ""
}

// starting reads a start tag with its attributes.
func (m *markup) starting() (token, string) {
	doc, i := m.doc, m.at+1
	from := i
	for i < len(doc) && !blank(doc[i]) && doc[i] != '>' && doc[i] != '/' {
		i++
	}
	full := doc[from:i]
	if full == "" || len(m.open) >= maxDepth {
		return m.fail()
	}
	m.name, m.attrs = local(full), m.attrs[:0]
	for {
		for i < len(doc) && blank(doc[i]) {
			i++
		}
		switch {
		case i >= len(doc):
			return m.fail()
		case doc[i] == '>':
			m.open, m.at = append(m.open, full), i+1
			return atStart, ""
		case doc[i] == '/':
			if i+1 >= len(doc) || doc[i+1] != '>' {
				return m.fail()
			}
			m.bare, m.at = true, i+2
			return atStart, ""
		}
		if i = m.attribute(i); i < 0 {
			return m.fail()
		}
	}
}

// attribute reads one attribute and returns where it ends, or -1.
func (m *markup) attribute(i int) int {
	doc, from := m.doc, i
	for i < len(doc) && doc[i] != '=' && doc[i] != '<' && doc[i] != '>' {
		i++
	}
	if i >= len(doc) || doc[i] != '=' {
		return -1
	}
	name := strings.TrimRight(doc[from:i], " \t\r\n")
	for i++; i < len(doc) && blank(doc[i]); i++ {
	}
	if name == "" || i >= len(doc) || doc[i] != '"' && doc[i] != '\'' {
		return -1
	}
	end := strings.IndexByte(doc[i+1:], doc[i])
	if end < 0 {
		return -1
	}
	m.attrs = append(m.attrs, attr{local(name), doc[i+1 : i+1+end]})
	return i + end + 2
}

// blank tells the characters that part attributes.
func blank(c byte) bool { return c == ' ' || c == '\n' || c == '\t' || c == '\r' }

// local is a name without its prefix.
func local(name string) string { return name[strings.IndexByte(name, ':')+1:] }
