package rules

import "catchplate/planner/plan"

func number(id, title, text, why, sure, source string) Number {
	return Number{plan.Rule{ID: id, Class: "number", Title: title, Text: text, Why: why, Sure: sure, Source: source}}
}

var (
	spotFirst = number("A-02", "Spot before drilling", "IF a hole is drilled on the axis THEN spot it first with a short stiff drill.",
		"a long drill bends at the start and follows its own error", "published", "pilot and spotting notes (machinistpost.com)")
	stockForFinish = number("A-05", "Metal left for finishing", "IF a diameter is roughed THEN leave 0.5 mm on diameter and 0.2 mm on faces.",
		"enough to bite under the roughing marks, little enough not to heat", "published", "Navy Machinery Repairman course (1/32 in), Machine Shop Work (1/64 in); 0.5 and 0.2 are our choice between them")
	separateRoughing = number("A-03n", "When to rough apart", "IF a tolerance is under 0.1 mm, or the wall ends under a tenth of the diameter THEN roughing and finishing are two operations.",
		"a part roughed and finished at one go moves afterwards", "opinion", "the figures are ours; the practice is rule A-03")
	pilotChain = number("A-25", "Drill chain from solid", "IF a hole over 8 mm is drilled from solid THEN go up in steps: a pilot of 25-30 % first, and steps a light lathe can drive.",
		"the web of a large drill only pushes; a pilot takes its load away", "published", "pilot strategy notes (machinistpost.com): 25-30 %, useful from about 13 mm")
	holeSaw = number("A-26s", "Large holes by a hole saw", "IF a hole of a plate is wider than the drills owned THEN a hole saw may open it: the plate no thicker than its cup less 3, no faster than a drill of its size, 1.5 mm wider than the saw reckoned with, and 0.5 mm on diameter left for boring; alone it serves limits 1.5 mm wide.",
		"a ring of teeth takes a small part of the metal, and leaves the disc whole; thin teeth and a slack pilot wander", "common practice", "the table of accuracies, from memory; the spare depth is ours")
	drillBoreOrReam = number("A-26n", "Drill, bore or ream", "IF the grade is IT11 or coarser THEN drill to size; IT9-10 bore or ream; IT7-8 bore, or bore and ream a standard size.",
		"drills set size and place poorly", "published", "Machine Drawing, Fig. 15.2 (grades by process)")
	throughSkin = number("A-24", "Through the skin at one go", "IF round stock is black or cast THEN the first cut along its outside is at least 1.5 mm deep, on radius, or takes all that roughing takes, at three quarters of the speed.",
		"scale and sand blunt an edge that rubs in them", "published", "US Navy, Machinery Repairman training course, rough turning; the depth and the share are ours")
	reamAllowance = number("A-27", "Metal left for the reamer", "IF a hole is machine-reamed THEN leave 0.15 mm up to 5 mm, 0.25 mm to 20 mm, 0.4 mm to 50 mm on diameter.",
		"too little burnishes, too much tears and bells the mouth", "published", "reaming allowance table; TM 1-420: 0.13-0.25 on the lathe")
	partSpare = number("A-17n", "Spare on the parted face", "IF a parted face is faced afterwards THEN part 0.4 mm long; sawn off, 1.5 mm long.",
		"a parted face is hollow or domed, a saw wanders", "common practice", "common practice, no source")
	runOutExpected = number("B-02", "Run-out to expect", "IF a holding re-locates finished work THEN reckon with its usual full indicator reading, unless the workshop file says what it measures.",
		"relations need numbers", "published", "new scroll chucks: maker's list 92815; collets: DIN 6499; others common practice")
	holdingTimes = number("B-01", "Ladder of holdings", "IF several holdings pass every test THEN the one that is quickest to set is preferred.",
		"setting time rules a one-off", "opinion", "the order is common practice; the minutes are ours")
	speedStep = number("C-01", "Speed on the machine's steps", "IF a cutting speed and a diameter are given THEN n = 1000 v / (pi D), and the nearest step of the machine below it.",
		"too slow costs time, too fast costs the tool", "published", "TM 1-420 change 1 (formula)")
	lowestCap = number("C-02", "The lowest cap wins", "IF several caps apply THEN the lowest rules, and the sheet says which.",
		"one reason is understood", "common practice", "common practice, no source")
	operationFactors = number("C-03", "Operation factors on speed", "IF the operation is not plain turning or drilling THEN ream at 0.5, part and groove at 0.5, thread at 0.3, bore at 0.8, knurl at 0.3 of the speed.",
		"wide or trapped edges chatter and heat", "published", "TM 1-420; course slides; shop formula list (ranges; the figure within each is ours)")
	pecking = number("C-05", "Pecking", "IF a hole is deeper than 3 drill diameters THEN withdraw to clear at 3, then at every further diameter.",
		"packed chips break drills", "published", "peck drilling note (three diameters); the rest common practice")
	barOverhang = number("C-06", "Boring-bar overhang", "IF a steel boring bar stands out more than 4 times its diameter THEN it is refused for fine work.",
		"stiffness falls with the cube", "published", "CTE magazine, Boring: calculating deflection (2019)")
	oneWay = number("C-08", "Backlash, one way", "IF a screw dial sets a place THEN it is always approached in the same direction; when overshot, go back a full turn and come again.",
		"slack in the nut is 0.05 to 0.5 mm", "common practice", "common practice, no source")
	dialReads = number("C-09", "What the dial reads", "IF the cross-slide dial is used THEN the card says whether it reads radius or diameter.",
		"the commonest scrap", "published", "dial conventions (industrialmonitordirect)")
	mixedUnits = number("C-10", "Mixed units", "IF drawing and dial differ in unit THEN the absolute position is converted (25.4 exactly), once, at the dial.",
		"rounded steps add up", "common practice", "common practice, no source")
	metalOn = number("C-11", "Round to metal on", "IF a setting falls between graduations THEN round so that metal is left.",
		"metal cannot be put back", "common practice", "common practice, no source")
	coarseDial = number("C-12", "Graduation too coarse", "IF the tolerance is under 2 graduations THEN the last cut is set by measuring, not by the dial.",
		"the dial cannot promise it", "common practice", "common practice, no source")
	trialCut = number("C-15", "Trial cut", "IF the tolerance is 0.05 mm or less THEN stop 0.2 mm over, measure, and take the last cut from the measurement.",
		"dials give differences, not sizes", "published", "F. D. Jones (1914) p. 9; Navy Machinery Repairman course")
	fileLeave = number("C-18", "Metal left for the file", "IF a curve is finished by hand THEN the steps leave crests of at most 0.08 mm in steel and 0.1 mm in soft metal.",
		"more rounds the shape, less wastes steps", "published", "Modern Metalworking p. 453 (0.05-0.07); the figure within it is ours")
	taperBySlide = number("C-22", "Taper by the top slide", "IF a short taper is turned THEN the top slide is swung to half the angle and set with an indicator along a true bar.",
		"the graduations on the base are coarse", "published", "F. D. Jones (1914), index")
	screwInfeed = number("C-28", "Screwcutting in-feeds", "IF a thread is cut with a single point THEN in-feeds fall from 0.2 to 0.03 mm to the full depth, with spring passes.",
		"chips flow, the last passes true the flanks", "published", "course slides, threading")
	passDepth = number("C-29", "Depth of a pass", "IF metal is roughed on a bench lathe THEN 1 mm a pass in steel and bronze, 1.5 mm in brass and aluminium, 0.5 mm in stainless.",
		"motors and tools stall", "published", "few deep cuts rather than many shallow (issuhub 4752); the figures are ours")
	pointDepth = number("C-30", "Depths and the drill's point", "IF a drilled depth is drawn THEN it is the full-diameter depth; the dial takes 0.3 D more, from first touch of the point.",
		"drawings do not count the cone", "published", "joshuanava.biz, dimensioning holes")
	partingTool = number("C-31", "Parting tool", "IF a part is parted off THEN the blade reaches 2 mm past the cut and the work is under 40 mm across; else it is sawn.",
		"a thin, trapped tool bends", "published", "TM 1-420; the widths and the 40 mm are common practice")
	stockLength = number("C-35", "Stock length", "IF a part is cut from bar THEN the bar holds the part, both facings, the parting cut, a clearance of 5 mm and the grip.",
		"a bar 2 mm short is scrap", "common practice", "common practice, no source")
	toMeasuredSize = number("C-36", "To the measured size", "IF a holding depends on a made size THEN the sheet says \"to the measured bore\" and leaves a place for the figure.",
		"real holes vary", "common practice", "common practice, no source")
	sameSetting = number("A-06", "Related features in one setting", "IF two surfaces are bound by a relation THEN both are finished in one setting wherever the tools reach; so is a groove with the surface that carries it, or it is held by that surface.",
		"within one setting the error is the spindle's", "published", "\"Geometer\", Setting-up for second operations; notes on chucks (C. H.)")
	runOutShare = number("A-07", "Share-out of the run-out", "IF a relation must cross from one setting to the next THEN the holding's run-out may be at most half of it.",
		"the rest is needed for spindle, tool and measuring", "opinion", "the share is ours")
	fewestSettings = number("A-46", "Fewest settings", "IF two orders satisfy everything THEN fewer settings come first, then fewer tool changes.",
		"settings cost most time and most truth", "common practice", "common practice, no source")
	holeFirst = number("A-10", "Hole first, then the shaft", "IF two parts make a fit THEN the part with the hole is made and measured first.",
		"outside sizes are easier to creep up on", "published", "Turning Mechanical, internal cylinder (chestofbooks.com)")
	helpersFirst = number("A-47", "Make the helpers first", "IF a plan uses a mandrel, plug or arbor THEN it is listed as a small job before the setting that uses it; one turned in place is not taken out.",
		"a fixture turned in place has no run-out only until it is moved", "published", "\"Geometer\", Setting-up for second operations")
	instrumentChoice = number("E-01", "Ten to one, four at worst", "IF a tolerance is to be proved THEN the instrument's uncertainty is at most a tenth of it, a quarter at worst.",
		"else good parts fail and bad ones pass", "standard", "the 1:10 rule; ISO 14253-1 (not opened)")
	measureInTime = number("E-03", "Measure when it can still be mended", "IF a tolerance is under 0.2 mm THEN measure before the last cut and again before letting go.",
		"it cannot be put back true", "published", "Navy Machinery Repairman course")
	easeGrip = number("B-24", "Ease the grip to finish", "IF the wall is under an eighth of the diameter THEN rough at full grip, slacken to a nip, and finish.",
		"the final shape is the relaxed one", "published", "Bourne, A Catechism of the Steam Engine, q. 707")
	colletGrip = number("B-20", "Soft jaws bored in place", "IF a finished outside must be held true and unmarked THEN soft jaws are bored in place to its size, 0 to 0.05 mm small.",
		"the jaws match this diameter at this tightness", "published", "workshop pages (Hall, p. 110); soft-jaw makers")
	clampGeometry = number("B-08", "Clamp geometry", "IF a strap clamp is used THEN its stud stands at one third of the strap from the work, its packing 1 to 3 higher than the work, the strap level or a shade down at the work; the work gets two thirds of the bolt's pull, torque over 0.2 d.",
		"leverage, and loose packing becomes a missile", "published", "what-when-how, Milling: clamps (stud at one third); workshop pages (Hall, p. 272, 291); the bolt's pull is handbook practice")
	clampedToTable = number("B-34", "Clamped to the table", "IF a plate is larger than the vice or all its edges must be free THEN clamp it to the table, cut inside the clamps, move clamps one at a time, an end stop against the cut.",
		"never lose the datum", "published", "Modern Mechanical Engineering vol. I p. 203; workshop pages (Hall, p. 291)")
	backing = number("B-35", "Backing for break-through", "IF a tool passes through THEN back the work with a board of at least 0.3 of the tool's diameter and 3, or pack it clear by its point and 2, parallels 2 outside the hole; on a faceplate leave 3 behind for the boring tool's nose.",
		"clean exit, and the machine is not drilled", "published", "autonopedia, Metalworking: the basics ch. 12 (hardwood rest); the point's length is geometry")
	surfaceSpeedCap = number("B-29", "Chuck speed cap", "IF a chuck is used THEN the speed stays under the figure marked on it, or 20 m/s at the rim if unmarked.",
		"jaws fly outwards and let go", "standard", "EN 1550 and DIN 6386 as quoted in lathe manuals; the unmarked cap is ours")
)
