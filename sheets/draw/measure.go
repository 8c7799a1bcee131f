package draw

import "strings"

// ascent and descent bound a line of text above and below its base line, in sizes of the font: the larger of DejaVu Sans and Liberation Sans.
const (
	ascent  = 0.93
	descent = 0.24
)

// LineStep is the distance of base lines, in sizes of the font.
const LineStep = 1.25

// Width is the room in millimetres that a line of text may take: the sum of its letters, each at the wider of DejaVu Sans and Liberation
// Sans (whose widths are those of Arial and Helvetica), as measured in Chromium 156. A letter outside the tables counts as widest.
func Width(text string, size float64, bold bool) float64 {
	table := &regular
	if bold {
		table = &boldface
	}
	total := 0
	for _, r := range text {
		switch {
		case r >= ' ' && r <= '~':
			total += table[r-' ']
		case strings.ContainsRune(likeFigure, r):
			total += 850
		default:
			total += widest
		}
	}
	return float64(total) * size / 1000
}

// likeFigure are signs that measure at most 0.85 of the font's size in both fonts and both weights.
const likeFigure = "Ø±×°″′≈≤≥·–⌀"

// widest is more than any letter of either font.
const widest = 1110

// regular and boldface hold the widths of the signs from space to ~, in thousandths of the font's size.
var regular = [95]int{
	318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337,
	636, 636, 636, 636, 636, 636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 556,
	1015, 684, 686, 722, 770, 667, 611, 778, 752, 295, 500, 667, 557, 863, 748, 787,
	667, 787, 722, 667, 611, 732, 684, 989, 685, 667, 685, 390, 337, 390, 838, 556,
	500, 613, 635, 550, 635, 615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612,
	635, 635, 411, 521, 392, 634, 592, 818, 592, 592, 525, 636, 337, 636, 838,
}

var boldface = [95]int{
	348, 456, 521, 838, 696, 1002, 872, 306, 457, 457, 523, 838, 380, 415, 380, 365,
	696, 696, 696, 696, 696, 696, 696, 696, 696, 696, 400, 400, 838, 838, 838, 611,
	1000, 774, 762, 734, 830, 683, 683, 821, 837, 372, 556, 775, 637, 995, 837, 850,
	733, 850, 770, 720, 682, 812, 774, 1103, 771, 724, 725, 457, 365, 457, 838, 556,
	500, 675, 716, 593, 716, 678, 435, 716, 712, 343, 343, 665, 343, 1042, 712, 687,
	716, 716, 493, 595, 478, 712, 652, 924, 645, 652, 582, 712, 365, 712, 838,
}

// Wrap parts a text into lines no wider than width, at spaces, and within a word where one word is too long. It gives at least one line.
func Wrap(text string, width, size float64, bold bool) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if joined := strings.TrimSpace(line + " " + word); Width(joined, size, bold) <= width {
			line = joined
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		line = word
		for Width(line, size, bold) > width {
			head, tail := breakWord(line, width, size, bold)
			lines, line = append(lines, head), tail
			if tail == "" {
				break
			}
		}
	}
	if line != "" || len(lines) == 0 {
		lines = append(lines, line)
	}
	return lines
}

// breakWord takes as many letters as fit, at least one.
func breakWord(word string, width, size float64, bold bool) (head, tail string) {
	letters := []rune(word)
	n := 1
	for n < len(letters) && Width(string(letters[:n+1]), size, bold) <= width {
		n++
	}
	return string(letters[:n]), string(letters[n:])
}
