package draw

// Onto draws a plan on a canvas, for tests that look at what is drawn.
var Onto = drawPlan
