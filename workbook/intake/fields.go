package intake

import (
	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
)

// field is one cell of the form that stands alone: how it is shown, and where
// its value goes. Form, reader and corrections use the same table.
type field struct {
	name  string // defined name of its cell
	path  string // of the value in a job
	label string
	help  string // beside the cell; what an empty cell means
	need  bool   // must be filled
	along bool   // must be filled once its group of the job says anything
	least int    // of a count
	most  int    // of a count, a percentage, or characters of words; 0: the usual
	line  int    // of words in several lines, from 1
	tall  bool   // words of several lines in one cell
	unit  string // of a bare number
	plain bool   // a number that is no percentage
	late  bool   // not on forms of earlier versions
	list  string // name of the drop-down
	of    func(*catalog.Catalog) choices
	to    func(*job.Job) any // place of the value; its type says what may be typed
}

// section is a group of fields under a band.
type section struct {
	title  string
	path   string // of the group in a job
	fields []field
}

// sections lists the fields that stand alone, in the order of the form.
func sections(sys unit.System) []section {
	return []section{
		{"Quote", "", quoteFields()},
		{"Customer", "customer", customerFields()},
		{"Event", "event", eventFields()},
		{"Dates", "dates", dateFields()},
		{"Delivery and labour", "delivery", deliveryFields(sys)},
		{"Wind, heat and power", "wind", placeFields(sys)},
		{"Plot", "plot", plotFields(sys)},
		{"Discount and notes", "discount", noteFields()},
	}
}

func quoteFields() []field {
	return []field{
		{name: "intake_number", path: "number", label: "Quote number", help: "Needed. As your office counts quotes, e.g. 2026-044.", need: true, most: 40, to: func(j *job.Job) any { return &j.Number }},
		{name: "intake_revision", path: "revision", label: "Revision", help: "Empty or 0 for a first quote.", most: 999, to: func(j *job.Job) any { return &j.Revision }},
		{name: "intake_quoted", path: "dates.quoted", label: "Date of the quote", help: "Needed. Its validity counts from this day.", need: true, to: func(j *job.Job) any { return &j.Dates.Quoted }},
		{name: "intake_show", path: "show_prices", label: "Prices shown", help: "How much the customer sees; empty: as your shop usually does.", list: "shows", of: shows, to: func(j *job.Job) any { return &j.Show }},
	}
}

func customerFields() []field {
	address := func(j *job.Job) any { return &j.Customer.Address }
	return []field{
		{name: "intake_customer_name", path: "customer.name", label: "Customer", help: "Needed. Who pays, as the quote is addressed.", need: true, most: 120, to: func(j *job.Job) any { return &j.Customer.Name }},
		{name: "intake_customer_contact", path: "customer.contact", label: "Contact", help: "Whom to ask for.", to: func(j *job.Job) any { return &j.Customer.Contact }},
		{name: "intake_customer_address_1", path: "customer.address", label: "Address", help: "Street.", line: 1, to: address},
		{name: "intake_customer_address_2", path: "customer.address", label: "Address, second line", help: "Town.", line: 2, to: address},
		{name: "intake_customer_address_3", path: "customer.address", label: "Address, third line", help: "If there is more.", line: 3, to: address},
		{name: "intake_customer_phone", path: "customer.phone", label: "Phone", help: "Digits, blanks and dashes as you like.", to: func(j *job.Job) any { return &j.Customer.Phone }},
		{name: "intake_customer_email", path: "customer.email", label: "Email", help: "Where the quote is sent.", to: func(j *job.Job) any { return &j.Customer.Email }},
		{name: "intake_customer_class", path: "customer.class", label: "Customer class", help: "Standing discount on hire; empty: the first of the list.", list: "classes", of: classes, to: func(j *job.Job) any { return &j.Customer.Class }},
		{name: "intake_customer_exempt", path: "customer.tax_exempt", label: "Tax exempt", help: "Yes only with a certificate on file; empty: No.", to: func(j *job.Job) any { return &j.Customer.Exempt }},
	}
}

func eventFields() []field {
	address := func(j *job.Job) any { return &j.Event.Address }
	return []field{
		{name: "intake_event_name", path: "event.name", label: "Event", help: "Needed. What the tents are for.", need: true, most: 120, to: func(j *job.Job) any { return &j.Event.Name }},
		{name: "intake_event_guests", path: "event.guests", label: "Guests", help: "A whole number; empty if it is not known.", most: 100000, to: func(j *job.Job) any { return &j.Event.Guests }},
		{name: "intake_event_use", path: "event.use", label: "Use of the floor", help: "How the guests sit or stand; empty: the first of the list.", late: true, list: "uses", of: uses, to: func(j *job.Job) any { return &j.Event.Use }},
		{name: "intake_event_address_1", path: "event.address", label: "Site", help: "Where to deliver: place or street.", line: 1, to: address},
		{name: "intake_event_address_2", path: "event.address", label: "Site, second line", help: "Town.", line: 2, to: address},
		{name: "intake_event_address_3", path: "event.address", label: "Site, third line", help: "Gate, field, floor.", line: 3, to: address},
		{name: "intake_event_contact", path: "event.site_contact", label: "Contact on site", help: "Who opens the gate, with phone.", to: func(j *job.Job) any { return &j.Event.Contact }},
		{name: "intake_access", path: "event.access", label: "Access", help: "The way in: gate, its width, hours, keys.", late: true, to: func(j *job.Job) any { return &j.Event.Access }},
		{name: "intake_parking", path: "event.parking", label: "Parking", help: "Where vehicles stand once they are unloaded.", late: true, to: func(j *job.Job) any { return &j.Event.Parking }},
		{name: "intake_tax_place", path: "event.tax_place", label: "Place for tax", help: "Where the event is taxed; your accountant knows what is due there.", list: "places", of: places, to: func(j *job.Job) any { return &j.Event.Place }},
	}
}

func dateFields() []field {
	return []field{
		{name: "intake_deliver", path: "dates.deliver", label: "Delivery", help: "Needed. First day on site, e.g. 2026-07-03.", need: true, to: func(j *job.Job) any { return &j.Dates.Deliver }},
		{name: "intake_from", path: "dates.event_from", label: "Event from", help: "Needed. First day of the event.", need: true, to: func(j *job.Job) any { return &j.Dates.From }},
		{name: "intake_to", path: "dates.event_to", label: "Event to", help: "Needed. Last day of the event; the same day for a single one.", need: true, to: func(j *job.Job) any { return &j.Dates.To }},
		{name: "intake_strike", path: "dates.strike", label: "Taken down", help: "Needed. Not before the event ends.", need: true, to: func(j *job.Job) any { return &j.Dates.Strike }},
		{name: "intake_collect", path: "dates.collect", label: "Collection", help: "Needed. Last day on site.", need: true, to: func(j *job.Job) any { return &j.Dates.Collect }},
		{name: "intake_signed", path: "dates.signed", label: "Order signed", help: "Empty: not yet.", late: true, to: func(j *job.Job) any { return &j.Dates.Signed }},
		{name: "intake_charged", path: "dates.charged_days", label: "Charged days", help: "Empty: the days of the event.", least: 1, most: 400, to: func(j *job.Job) any { return &j.Dates.Charged }},
	}
}

func deliveryFields(sys unit.System) []field {
	one := sys.DistanceUnit()
	return []field{
		{name: "intake_distance", path: "delivery.distance", label: "Distance one way, " + one, unit: one, help: "Needed. A bare number is in " + one + "; \"12 mi\" or \"20 km\" is read too.", need: true, to: func(j *job.Job) any { return &j.Delivery.Distance }},
		{name: "intake_zone", path: "delivery.zone", label: "Delivery zone", help: "Empty: by the distance.", list: "zones", of: zones, to: func(j *job.Job) any { return &j.Delivery.Zone }},
		{name: "intake_free", path: "delivery.free", label: "Delivery free", help: "Yes if the customer collects, or it is thrown in; empty: No.", to: func(j *job.Job) any { return &j.Delivery.Free }},
		{name: "intake_labour", path: "labour.charge", label: "Labour", help: "Empty: charged.", list: "charges", of: charges, to: func(j *job.Job) any { return &j.Labour.Charge }},
		{name: "intake_tries", path: "labour.tries", label: "Schedules tried", help: "In search of a short one; empty: as your shop does.", late: true, least: 1, most: 10_000_000, to: func(j *job.Job) any { return &j.Labour.Tries }},
	}
}

func noteFields() []field {
	return []field{
		{name: "intake_discount", path: "discount.percent", label: "Discount on the hire, %", help: "Percent by hand; type 10 for ten percent.", most: 100, to: func(j *job.Job) any { return &j.Discount.Percent }},
		{name: "intake_discount_reason", path: "discount.reason", label: "Reason of the discount", help: "For the office.", to: func(j *job.Job) any { return &j.Discount.Reason }},
		{name: "intake_notes", path: "notes", label: "Notes for the customer", help: "Printed on the quote.", most: 4000, tall: true, to: func(j *job.Job) any { return &j.Notes }},
		{name: "intake_office_notes", path: "office_notes", label: "Notes for the office", help: "Never leave the office.", most: 4000, tall: true, to: func(j *job.Job) any { return &j.Internal }},
	}
}
