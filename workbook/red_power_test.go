package workbook_test

// A closed tent that is heated and lit from a generator, one of its two heaters
// ordered by hand.
const (
	warmTent = "tents: [{id: a, family: hip, size: 40x80, sides: [{side: front, wall: window, doors: [double]}, {side: right, wall: solid}, {side: back, wall: window}, {side: left, wall: solid}]}]\n"
	warmJob  = warmTent + "items: [{item: perimeter-light, quantity: 22}, {item: heater-170, quantity: 1}]\n" +
		"heat: {inside: 68 F, outside: 36 F, hours: 8}\npower: {source: generator, distance: 150 ft, hours: 9}\n"
)
