package draw

import "strings"

// trade are the names of files that the trade says otherwise than letter for letter.
var trade = strings.NewReplacer("three_jaw", "three-jaw chuck", "four_jaw", "four-jaw chuck", "between_centres", "centres and carrier")

// Plain shows the names of the part file as words: "three_jaw" is a three-jaw chuck, "bore_gauge" a bore gauge. An underscore that joins nothing stays.
func Plain(text string) string {
	letters := []rune(trade.Replace(text))
	for i, r := range letters {
		if r == '_' && i > 0 && i+1 < len(letters) && inWord(letters[i-1]) && inWord(letters[i+1]) {
			letters[i] = ' '
		}
	}
	return string(letters)
}

func inWord(r rune) bool {
	return r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
}

// Title is a name as a heading: "gland_nut" becomes "Gland nut".
func Title(name string) string {
	words := Plain(name)
	if words != "" && words[0] >= 'a' && words[0] <= 'z' {
		return strings.ToUpper(words[:1]) + words[1:]
	}
	return words
}
