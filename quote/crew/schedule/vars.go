package schedule

import "os"
import "strconv"

var VARS = map[string]int{}

func V(name string, def int) int {
	if s := os.Getenv(name); s != "" {
		def, _ = strconv.Atoi(s)
	}
	return def
}

var sp, sp0 = V("SPREAD", 100), V("SPREAD0", 100)

func spreadOf(T, nth int) int { return T*(sp0+(sp-sp0)*nth/crowdSize)/100 + 1 }

var repl = V("REPL", 0)
var mix = V("MIX", 0)
var slackPc = V("SLACK", 0)
var way = V("WAY", 0)
