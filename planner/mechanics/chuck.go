package mechanics

import "math"

// ForceRange is a force of which only the range is known, N.
type ForceRange struct {
	LowN, HighN float64
	Confidence
}

// A keyChuck is a hand-tightened self-centring chuck: grip of all jaws together at its full rated key torque, lubricated.
type keyChuck struct {
	diameterMM, torqueNm, totalN float64
}

// keyChucks is a chuck maker's printed table (Bison manual, table 7, read as extracted text); 31 kN at 160 mm is
// confirmed by a second manual and a listing, 37 kN at 200 mm by the listing.
var keyChucks = []keyChuck{
	{80, 35, 10000},
	{100, 50, 17000},
	{125, 75, 24000},
	{160, 120, 31000},
	{200, 160, 37000},
}

// poorLubricant: dry or gummed scroll and jaws can halve the force (chuck maker's manual, Roehm KZZT).
const poorLubricant = 0.5

// HandChuckGrip is the total grip of a hand-tightened three-jaw chuck from the torque on its key: from the maker's figure
// down to half of it for a badly kept chuck. Between the tabled sizes force per N m and rated torque are interpolated.
// Domain: 80 to 200 mm, up to the rated torque; a light pull is a straight-line reading of the table, which no maker
// prints, so always rough. What the hand does is not in it: see HandTorque.
func HandChuckGrip(chuckDiameterMM, keyTorqueNm float64) (ForceRange, error) {
	rated, perNm := ratedKey(chuckDiameterMM)
	if err := firstFault(
		within("chuck diameter (mm)", chuckDiameterMM, 40, 400),
		limit{"key torque (N m)", keyTorqueNm, keyTorqueNm >= 0 && keyTorqueNm <= rated, "0 up to the chuck's rated key torque"},
	); err != nil {
		return ForceRange{}, err
	}
	high := perNm * keyTorqueNm
	why := "hand-tightened: force by the maker's table, half of it with a dry scroll"
	if chuckDiameterMM < keyChucks[0].diameterMM || chuckDiameterMM > keyChucks[len(keyChucks)-1].diameterMM {
		why = "chuck outside the maker's table (80 to 200 mm): the nearest size was taken"
	}
	return ForceRange{high * poorLubricant, high, rough(bandBound, why)}, nil
}

// ratedKey interpolates the table; beyond its ends the nearest row serves, its torque in proportion to the size.
func ratedKey(diameterMM float64) (ratedNm, perNm float64) {
	first, last := keyChucks[0], keyChucks[len(keyChucks)-1]
	switch {
	case diameterMM <= first.diameterMM:
		return first.torqueNm * diameterMM / first.diameterMM, first.totalN / first.torqueNm
	case diameterMM >= last.diameterMM:
		return last.torqueNm, last.totalN / last.torqueNm
	}
	i := 0
	for diameterMM > keyChucks[i+1].diameterMM {
		i++
	}
	a, b := keyChucks[i], keyChucks[i+1]
	t := (diameterMM - a.diameterMM) / (b.diameterMM - a.diameterMM)
	return a.torqueNm + t*(b.torqueNm-a.torqueNm), a.totalN/a.torqueNm*(1-t) + b.totalN/b.torqueNm*t
}

// Feel is how hard a key is pulled, in words a person can act on. The zero value is invalid.
type Feel string

const (
	FeelNip  Feel = "nip"  // finger and thumb on the key
	FeelFirm Feel = "firm" // one hand, no lean
	FeelHard Feel = "hard" // both hands, weight on the key
)

// Feels lists the feels from light to hard.
func Feels() []Feel { return []Feel{FeelNip, FeelFirm, FeelHard} }

// feelShares are shares of the rated key torque; opinion, no source: a nip on a 100 mm chuck is 2.5 to 7.5 N m.
var feelShares = map[Feel][2]float64{
	FeelNip:  {0.05, 0.15},
	FeelFirm: {0.2, 0.5},
	FeelHard: {0.6, 1},
}

// HandTightened is the grip of all jaws that a feel gives: the lightest pull on a dry scroll to the hardest on an oiled one.
// The range is a factor of six for a nip: that is the truth of hand tightening, and why a figure alone must not be printed.
func HandTightened(chuckDiameterMM float64, feel Feel) (ForceRange, error) {
	shares, known := feelShares[feel]
	if !known {
		return ForceRange{}, &InputError{"feel", 0, "nip, firm or hard"}
	}
	rated, _ := ratedKey(chuckDiameterMM)
	low, err := HandChuckGrip(chuckDiameterMM, rated*shares[0])
	if err != nil {
		return ForceRange{}, err
	}
	high, err := HandChuckGrip(chuckDiameterMM, rated*shares[1])
	return ForceRange{low.LowN, high.HighN, high.Confidence}, err
}

// lostAtReference is the share of the rated grip that the jaws' own weight takes away at a chuck's reference speed: one
// third is left there (EN 1550 and DIN 6386 as quoted by a chuck maker).
const lostAtReference = 2. / 3

// GripAtSpeed is what is left of a standing outside grip when the chuck turns: F0 - 2/3 F rated (n/n reference)^2, never
// below 0. Gripping from inside the same force is added. Domain: jaws within the body's rim, speeds up to the reference.
// Error: heavy or outstanding jaws lose more.
func GripAtSpeed(standingN, ratedN, rpm, referenceRPM float64, inside bool) (float64, error) {
	if err := firstFault(notNegative("standing grip (N)", standingN), positive("rated grip (N)", ratedN),
		notNegative("speed (rev/min)", rpm), positive("reference speed (rev/min)", referenceRPM)); err != nil {
		return 0, err
	}
	change := lostAtReference * ratedN * (rpm / referenceRPM) * (rpm / referenceRPM)
	if inside {
		return standingN + change, nil
	}
	return math.Max(0, standingN-change), nil
}

// SpeedForGrip is the highest speed at which an outside grip still has neededN, the inverse of GripAtSpeed, and no more
// than the reference speed; 0 if the standing grip is too small already.
func SpeedForGrip(standingN, ratedN, neededN, referenceRPM float64) (float64, error) {
	if err := firstFault(notNegative("standing grip (N)", standingN), positive("rated grip (N)", ratedN),
		notNegative("needed grip (N)", neededN), positive("reference speed (rev/min)", referenceRPM)); err != nil {
		return 0, err
	}
	spare := standingN - neededN
	if spare <= 0 {
		return 0, nil
	}
	return referenceRPM * math.Min(1, math.Sqrt(spare/(lostAtReference*ratedN))), nil
}

// RimSpeedRPM is the speed at which a rim of a diameter runs at metresPerSecond: 60 000 v/(pi D). An unmarked chuck is
// held to 20 m/s (opinion), an old cast-iron body never above 30 (B-29).
func RimSpeedRPM(diameterMM, metresPerSecond float64) (float64, error) {
	err := firstFault(positive("diameter (mm)", diameterMM), positive("rim speed (m/s)", metresPerSecond))
	return 60000 * metresPerSecond / (math.Pi * diameterMM), err
}
