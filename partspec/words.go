package partspec

import "fmt"

// alsoCalled are words of the drawing office for what the language calls otherwise.
var alsoCalled = map[string]string{
	"pcd": "circle", "pitch_circle": "circle", "bolt_circle": "circle", "number": "count", "dia": "diameter", "tap": "thread", "tapped": "thread",
	"cbore": "counterbore", "spotface": "counterbore", "csk": "countersink", "centre": "at", "place": "at", "step": "spigot", "boss": "spigot",
	"journal": "spigot", "drilling": "holes", "undercut": "groove", "keyseat": "slot", "cradle": "seat", "saddle": "seat", "shape": "outline",
	"contour": "outline", "blank": "stock",
}

// laterWords are words of the trade that the language does not take yet; they
// are refused by name, so that nobody looks for a misspelling.
var laterWords = []string{
	"wrapper", "joint", "finish", "place", "job", "rack", "keyway", "gear",
}

// wordExamples are those of words, figureExamples those of figures whose kind says too little.
var wordExamples = map[string]string{
	"material": `"brass"`, "clearance": `"M4"`, "thread": `"M4"`, "size": `"M6"`, "on": `"body"`, "into": `"main"`,
	"edge": `"rim.left"`, "of": `"rim"`, "to": `"main"`, "locate_by": `"dial"`, "bulge": `"out"`, "finish_by": `"file"`, "hand": `"left"`, "class": `"6H"`,
	"axis": `"eccentric"`, "from": `"right", or "front" of a flat part`, "large_at": `"left"`, "named": `"MT2"`, "pattern": `"straight"`, "purpose": `"sliding"`,
	"ratio": `"1:20"`, "reads": `"diameter"`, "set": `"metric"`,
	"general": `"m"`, "drawn_in": `"inch"`, "datum": `["left", "bottom"]`,
}

var figureExamples = map[string]string{"within": "0.05", "dowel": `"4 H7"`, "position": "0.1"}

// example shows how an attribute is written.
func example(a attr) string {
	known := figureExamples
	if a.kind == kindWord || a.kind == kindTexts {
		known = wordExamples
	}
	if text, ok := known[a.name]; ok {
		return a.name + " = " + text
	}
	switch a.kind {
	case kindSize:
		return fmt.Sprintf(`%s = 20, or %[1]s = "7/8 in", or %[1]s = "20 +0.02 -0"`, a.name)
	case kindLength, kindPosition:
		return fmt.Sprintf(`%s = 20, or %[1]s = "7/8 in"`, a.name)
	case kindAngle:
		return a.name + " = 60"
	case kindNumber, kindCount:
		return a.name + " = 2"
	case kindFlag:
		return a.name + " = true"
	case kindLengths, kindNumbers:
		return a.name + " = [1, 2, 3]"
	case kindTexts:
		return a.name + ` = ["M6", "M8"]`
	case kindTurn:
		return a.name + " = 90"
	case kindPlace:
		return a.name + ` = [30, 70], or the name of a bore or of an arc's centre, like "main" or "top.centre"`
	case kindPlaces:
		return a.name + " = [[7, 7], [53, 7]]"
	case kindPair:
		return a.name + " = [20, 15]"
	case kindPattern:
		return a.name + " = part.flange.holes.ring"
	}
	return a.name + ` = "..."`
}
