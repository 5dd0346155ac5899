package catalog

// Codes of the faults that cross-checks find in a shop.
const (
	FileMissing    = "file-missing"     // a file that a shop folder must hold is not there
	UnknownID      = "unknown-id"       // an id is used that nothing defines
	RepeatedID     = "repeated-id"      // two entries of a kind share an id
	NoWeight       = "no-weight"        // a part has no weight, pole or cloth
	TwoWeights     = "two-weights"      // a part's weight is given in more than one way
	NoReplacement  = "no-replacement"   // a part that comes back has no replacement charge
	KitCycle       = "kit-cycle"        // a kit contains itself
	BadContent     = "bad-content"      // a content names both or neither of part and item
	NoDriver       = "no-driver"        // a rule does not say what drives it
	UnknownDriver  = "unknown-driver"   // a rule is driven by something that is never counted
	LateDriver     = "late-driver"      // a part rule is driven by something that is known only later
	IdleFamilies   = "idle-families"    // a rule is for some families, but driven by something of the whole job
	AfterCycle     = "after-cycle"      // labour rules wait for each other
	ZeroPrice      = "zero-price"       // a price of zero is not marked as free
	FreeWithPrice  = "free-with-price"  // something marked free has a price
	UnitMismatch   = "unit-mismatch"    // a unit does not fit the quantity
	TruckOverEmpty = "truck-over-empty" // a vehicle weighs more empty than it is rated for
	NoTow          = "no-tow"           // a trailer that nothing pulls
	BadSteps       = "bad-steps"        // steps of a table do not rise, or do not begin at 1
	PhaseWindow    = "phase-window"     // a phase belongs to no window of work, or to two
	BadProfile     = "bad-profile"      // a profile that cannot be made
	BadTop         = "bad-top"          // a size whose top is not described
	BadCurrency    = "bad-currency"     // not an ISO 4217 code that the program knows
	BadPicture     = "bad-picture"      // a logo that is no whole PNG or JPEG, or too large
	BadText        = "bad-text"         // terms or payment details that cannot be printed
	AnchorTwice    = "anchor-twice"     // a part rule takes an anchor that anchors.yaml takes
	BadAnchor      = "bad-anchor"       // a wind, a stake or a test of no size
	UnitsDiffer    = "units-differ"     // the numbers of a file are for other units than the company's
	BadHoliday     = "bad-holiday"      // a holiday that no year has, or a closed period that runs backwards
	BadDateRule    = "bad-date-rule"    // a date without a day of its own, or with two
	NoEnergy       = "no-energy"        // a heater's fuel does not say how much heat is in it
	PowerBelow     = "power-below"      // of two figures of heat and power, the larger one is the smaller
	RuleLoad       = "rule-load"        // a rule takes a part along that takes current
	LongPoints     = "long-points"      // more for the crew lead to look at than one page holds
	BadLift        = "bad-lift"         // a way of lifting that is not measured, or a table of lifting that allows more for less
	BadRaising     = "bad-raising"      // a jack without people, or more people with it than without
	BadDuty        = "bad-duty"         // a rule of driving hours that forbids nothing, or everything
	BadCrewDay     = "bad-crew-day"     // a window of work without a day of its own, or a day that cannot be
	BadBreak       = "bad-break"        // breaks that do not follow each other
	BadDaylight    = "bad-daylight"     // light that ends before it begins, or of some months only
	BadMost        = "bad-most"         // at most fewer people than at least
	BadSpread      = "bad-spread"       // minutes that do not rise from optimistic to pessimistic
)
