package svg

import "catchplate/sheets/draw"

// Style is the stylesheet of every image: black on white, meaning by the kind of line and by hatching alone. No line is thinner than 0.25 mm.
const Style = `.sketch text{font-family:Arial,Helvetica,"Liberation Sans","DejaVu Sans",sans-serif;fill:#000;stroke:#fff;stroke-width:0.9;stroke-linejoin:round;paint-order:stroke}
.sketch path,.sketch circle{fill:none;stroke:#000;stroke-width:0.25;stroke-linejoin:round;stroke-linecap:butt}
.sketch .outline{stroke-width:0.5}
.sketch .thin{stroke-width:0.25}
.sketch .centre{stroke-width:0.25;stroke-dasharray:6 1 1 1}
.sketch .hidden{stroke-width:0.35;stroke-dasharray:2 1}
.sketch .stays{stroke:none}
.sketch .off{stroke:none}
.sketch .holder{fill:#fff;stroke-width:0.7}
.sketch .paper{fill:#fff;stroke:none}
.sketch .glue{stroke-width:1.2}
.sketch .head{fill:#000;stroke:none}
.sketch .cutway{stroke-width:0.7}
.sketch .weave{stroke-width:0.25}
.sketch .speck{fill:#000;stroke:none}
`

// A pattern fills a class. Lines are at least 0.25 mm wide, so that any printer shows them.
type pattern struct {
	class draw.Class
	size  string // side of the tile
	turn  string // patternTransform
	tile  string
}

var patterns = []pattern{
	{draw.Stays, "2.2", ` patternTransform="rotate(45)"`, `<path class="weave" d="M0 0V2.2"/>`},
	{draw.Off, "1.6", "", `<circle class="speck" cx="0.8" cy="0.8" r="0.32"/>`},
}
