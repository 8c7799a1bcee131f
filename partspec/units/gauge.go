package units

import (
	"fmt"
	"strconv"
	"strings"
)

// swgInch is the imperial standard wire gauge, in inches, from 7/0 to 50.
// Source: Order in Council of 1883 (BS 3737), from memory.
var swgInch = map[string]string{
	"7/0": "0.5", "6/0": "0.464", "5/0": "0.432", "4/0": "0.4", "3/0": "0.372", "2/0": "0.348", "0": "0.324",
	"1": "0.3", "2": "0.276", "3": "0.252", "4": "0.232", "5": "0.212", "6": "0.192", "7": "0.176", "8": "0.16",
	"9": "0.144", "10": "0.128", "11": "0.116", "12": "0.104", "13": "0.092", "14": "0.08", "15": "0.072",
	"16": "0.064", "17": "0.056", "18": "0.048", "19": "0.04", "20": "0.036", "21": "0.032", "22": "0.028",
	"23": "0.024", "24": "0.022", "25": "0.02", "26": "0.018", "27": "0.0164", "28": "0.0148", "29": "0.0136",
	"30": "0.0124", "31": "0.0116", "32": "0.0108", "33": "0.01", "34": "0.0092", "35": "0.0084", "36": "0.0076",
	"37": "0.0068", "38": "0.006", "39": "0.0052", "40": "0.0048", "41": "0.0044", "42": "0.004", "43": "0.0036",
	"44": "0.0032", "45": "0.0028", "46": "0.0024", "47": "0.002", "48": "0.0016", "49": "0.0012", "50": "0.001",
}

// numberDrillThou lists the number drills #1 to #80 in thousandths of an inch.
// Source: ANSI/ASME B94.11M; the drill table of planner/tables carries the same
// sizes with the source of each, and a test there holds the two together.
var numberDrillThou = [...]string{
	"228", "221", "213", "209", "205.5", "204", "201", "199", "196", "193.5",
	"191", "189", "185", "182", "180", "177", "173", "169.5", "166", "161",
	"159", "157", "154", "152", "149.5", "147", "144", "140.5", "136", "128.5",
	"120", "116", "113", "111", "110", "106.5", "104", "101.5", "99.5", "98",
	"96", "93.5", "89", "86", "82", "81", "78.5", "76", "73", "70",
	"67", "63.5", "59.5", "55", "52", "46.5", "43", "42", "41", "40",
	"39", "38", "37", "36", "35", "33", "32", "31", "29.2", "28",
	"26", "25", "24", "22.5", "21", "20", "18", "16", "14.5", "13.5",
}

// letterDrillThou lists the letter drills A to Z in thousandths of an inch.
// Source: as numberDrillThou.
var letterDrillThou = [...]string{
	"234", "238", "242", "246", "250", "257", "261", "266", "272", "277", "281", "290", "295",
	"302", "316", "323", "332", "339", "348", "358", "368", "377", "386", "397", "404", "413",
}

// gaugeInThou reads a wire gauge or a number or letter drill and returns the
// figure in thousandths of an inch as decimal text. ok is false where text is
// neither; err is set where it is one, but no such size exists.
func gaugeInThou(text string) (thou string, ok bool, err error) {
	words := strings.Fields(strings.ToLower(text))
	switch {
	case len(words) == 2 && words[1] == "swg":
		inch, known := swgInch[words[0]]
		if !known {
			return "", true, fmt.Errorf("no wire gauge %s swg: gauges run from 7/0 swg to 50 swg", words[0])
		}
		return scaledByThousand(inch), true, nil
	case len(words) > 0 && words[len(words)-1] == "drill":
		return drillInThou(words[:len(words)-1])
	case len(words) == 2 && words[0] == "letter":
		return drillInThou(words)
	}
	return "", false, nil
}

// drillInThou reads the words before "drill": "#30", "no. 30", "number 30",
// "letter f" or "f". A drill named by its size ("7/32 in drill") is not ours.
func drillInThou(words []string) (thou string, ok bool, err error) {
	name := strings.Join(words, "")
	for _, prefix := range []string{"#", "number", "no.", "no"} {
		if rest, found := strings.CutPrefix(name, prefix); found {
			n, convErr := strconv.Atoi(rest)
			if convErr != nil || n < 1 || n > len(numberDrillThou) {
				return "", true, fmt.Errorf("no number drill %q: they run from #1 drill to #%d drill", rest, len(numberDrillThou))
			}
			return numberDrillThou[n-1], true, nil
		}
	}
	letter := strings.TrimPrefix(name, "letter")
	if len(letter) == 1 && letter[0] >= 'a' && letter[0] <= 'z' {
		return letterDrillThou[letter[0]-'a'], true, nil
	}
	if letter != name {
		return "", true, fmt.Errorf("no letter drill %q: they run from A drill to Z drill", letter)
	}
	return "", false, nil
}

// scaledByThousand multiplies a decimal text below 1 by a thousand, exactly.
func scaledByThousand(inch string) string {
	r, _ := decimalRat(inch)
	return r.Mul(r, thousand).FloatString(1)
}
