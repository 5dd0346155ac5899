package load

import "testing"

// Fuel rides in the open where the fleet has an open vehicle, however dear;
// a fleet without one carries it all the same, and the quote says so.
func TestFuelRidesInTheOpen(t *testing.T) {
	closed, open := truck("box", 1, 5000, 12000, 16, 10), truck("bed", 1, 5000, 12000, 16, 90)
	open.Open = true
	fuel, chairs := line("fuel", "power", 4, 40, 2, 2), line("chair", "furnish", 50, 9, 25, 4)
	fuel.Part.Apart = true

	plan, err := pack(shop(closed, open), fuel, chairs)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range plan.Out.Shares {
		if v := plan.Out.Trips[s.Trip].Vehicle; s.Part.ID == "fuel" && !v.Open {
			t.Errorf("fuel rides in %q, an open vehicle was expected", v.ID)
		}
	}
	plan, err = pack(shop(closed), fuel, chairs)
	if err != nil || len(plan.Out.Trips) != 1 {
		t.Errorf("a fleet without an open vehicle: %v", err)
	}
}

// A piece that may not be shut in and is too long for every open vehicle is a
// fault, not put into a closed one.
func TestFuelTooLongForTheOpen(t *testing.T) {
	closed, open := truck("box", 1, 5000, 12000, 16, 10), truck("bed", 1, 5000, 12000, 8, 90)
	open.Open = true
	fuel := line("fuel", "power", 1, 40, 1, 12)
	fuel.Part.Apart = true
	if plan, err := pack(shop(closed, open), fuel); err == nil {
		t.Errorf("planned on %q", plan.Out.Trips[0].Vehicle.ID)
	}
}
