package process

// Minutes that the work takes beside the cut itself. None has a source: they are our figures for careful one-off work on a small lathe, and the sheet
// says that the order rests on them.
const (
	minutesAPass    = 0.3 // wind back, set the dial, start again
	minutesTrial    = 1.5 // stop, measure, set from the measurement
	minutesADrill   = 0.8 // put in the next drill, bring the tailstock up
	minutesHandTap  = 2.0
	minutesHandDie  = 2.0
	minutesEdge     = 0.4
	minutesSlideSet = 6.0 // swing the top slide and set it with an indicator
	minutesSaw      = 4.0
	minutesGearSet  = 5.0  // change wheels on and off
	minutesFileArea = 0.02 // a square millimetre of curved surface
)

// cutMinutes is the time of passes over a length at a feed.
func cutMinutes(lengthMM float64, n int, r Rate) float64 {
	return float64(n) * (lengthMM/(r.FeedMM*r.RPM) + minutesAPass)
}
