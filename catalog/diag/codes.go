package diag

// Codes of the faults that reading a file can find. They are stable: scripts
// may compare them. Packages that check what was read have codes of their own.
const (
	// Syntax is text that is not YAML, or not UTF-8.
	Syntax = "yaml-syntax"
	// Feature is a part of YAML that these files do not use: anchors, aliases,
	// merge keys, tags, a second document.
	Feature = "yaml-feature"
	// EmptyFile is a file that holds nothing.
	EmptyFile = "empty-file"
	// TooLarge is a file above the limit of its size.
	TooLarge = "file-too-large"
	// TooDeep is a value nested deeper than any real file is.
	TooDeep = "nested-too-deep"
	// TooMany ends a list that was cut short.
	TooMany = "too-many-problems"
	// UnknownField is a field that its mapping does not have.
	UnknownField = "unknown-field"
	// RepeatedField is a field or name given twice in one mapping.
	RepeatedField = "repeated-field"
	// MissingField is a field that must be given and is not.
	MissingField = "missing-field"
	// EmptyValue is a field with nothing behind its colon.
	EmptyValue = "empty-value"
	// WrongKind is a value of another kind: a list for a number, and so on.
	WrongKind = "wrong-kind"
	// BadValue is a value of the right kind that cannot be read: a length
	// without a unit, a date that does not exist.
	BadValue = "bad-value"
	// OutOfRange is a number below its least or above its largest value.
	OutOfRange = "out-of-range"
	// TooLongText is a text with more characters than its place can show.
	TooLongText = "too-long-text"
	// NotOneOf is a word that is not among those a field allows.
	NotOneOf = "not-one-of"
	// BadTarget is a fault of the program: it asked to decode into a type that
	// cannot be decoded into.
	BadTarget = "bad-target"
)
