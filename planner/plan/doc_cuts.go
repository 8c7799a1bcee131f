package plan

// How cuts are read
//
// A setup points one end of the part away from the headstock (FreeEnd). Saddle and tailstock count towards the headstock, so with the
// right end free a count n of a dial whose graduation moves g millimetres stands at
//
//	Z = ReferenceMM - n*g        (left end free: Z = ReferenceMM + n*g)
//
// The cross slide counts from the diameter ReferenceMM towards the axis, or away from it when the zero says Outward:
//
//	R = ReferenceMM/2 - n*g      (Outward: + n*g; on a dial that reads diameters n*g is halved)
//
// The top slide moves n*g along its own direction, TopSlideDeg from the axis. The movement begins where cross and saddle stand in From
// and goes towards the headstock; a positive angle leads it away from the axis (the work grows towards the headstock), a negative one
// towards it. Beyond 90 degrees the same turn has gone past square, and the movement goes away from the headstock: -71 leads in and towards the
// headstock, -109 in and away from it.
//
// The point of the tool that stands at (Z, R) is
//
//   - turning, left or right hand, and boring: the corner where the leading and the inner (boring: outer) edge would meet if the nose were
//     sharp; the nose radius rounds it. A right-hand tool and a boring tool lead with their headstock side and trail away from it at
//     TrailDeg; a left-hand tool leads with the other side;
//   - grooving, parting, recess: the corner on the headstock side; the blade reaches from there towards the free end by its width;
//   - round_nose: the point of the nose nearest to the work, at the middle of its width;
//   - chamfer: the point of a vee whose two edges stand at the tool's angle to the axis, and reach FormReachMM along it to each side;
//   - drills, centre_drill: the point, with the full diameter behind it (118 degrees; a centre drill 60);
//   - reamers: the end, full diameter at once.
//
// Turning, facing, grooving and parting take away everything outside the tool's path, boring and recessing everything inside it as far as the
// axis; the way in and out is taken to be clear and the replay checks that it is. Parting also takes away all that lies towards the
// headstock. Threads, taps, dies and knurls are marks on their blank: they move no metal in this model, but the replay checks the blank. A file
// takes the crests that steps have left, and no more.

// TrailDeg is the angle at which the trailing edge of a knife or boring tool falls away from the work. Common practice, no source.
const TrailDeg = 5.0

// FormReachMM is how far each edge of a chamfer tool reaches along the axis. Common practice, no source.
const FormReachMM = 6.0

// DrillPointDeg is the included angle of a twist drill's point (ISO 235 drills, 118 degrees, from memory); CentreDrillDeg that of a centre
// drill's cone (ISO 866, 60 degrees, from memory).
const (
	DrillPointDeg  = 118.0
	CentreDrillDeg = 60.0
)

// How cuts on a mill or a drilling machine are read
//
// A setup with Machine of kind "mill" or "drill" stands in one of two poses. Upright (Across false): the spindle stands along the part's axis and
// the end or face FreeEnd looks up at it. Counts n of g millimetres then put the spindle's axis at
//
//	X = ReferenceMM + n*g   (FreeEnd "left": the part has been turned over about Y, and X = ReferenceMM - n*g)
//	Y = ReferenceMM + n*g
//
// and "quill" or "z", which count into the work, put the tool's end at
//
//	Z = ReferenceMM - n*g   (FreeEnd "left": Z = ReferenceMM + n*g)
//
// Across (Across true): the part's axis lies along the table's x with its right end towards +x, and the spindle stands square to it. Seen from the right
// end, the spindle stands in the direction AcrossDeg from +X of the part's frame (anticlockwise): call it up, and side the direction AcrossDeg - 90. Then
//
//	Z    = ReferenceMM + n*g   by the dial "x"
//	side = ReferenceMM + n*g   by the dial "y", from the part's axis
//	up   = ReferenceMM - n*g   by "quill" or "z", from the part's axis
//
// Work may be clamped to a mill's table turned round, so that an edge of the outline, which lies in the direction AskewDeg of the part, lies along the table's x. A cut that
// says Along is then a pass of the tool past that edge, its axis as far outside it as its radius and what is left there, and as far beyond both ends as it says; the line or the
// gauge that it is brought to says where that is, within WithinMM, and only the dial along the spindle is read.
//
// Where a machine has no dials for the table, or the place is taken from the work, a cut says in At where its spindle stands: at a punch mark, or in a hole
// that is there already, and how far that may lie from where it says.
//
// A machine without a dial along its spindle goes down to a measured "position": where the tool's end then is along the spindle. A dial of the table that is
// wound back whole turns from where it touched (Zero.WoundBack) reads nought at ReferenceMM, after winding back.
//
// The tool takes everything within its radius (half its size; a measured "diameter" for a boring head or a fly-cutter) of its axis on the way from From to To, from its end
// upwards. Drills and countersinks have their cone in front as on the lathe; a ball nose has a half sphere at its end; a hole saw takes the slug with it when
// it goes through. A face cut by an end mill or a fly-cutter moves along x or y; the way in and out is taken to be clear, and the replay checks that it is.
//
// A setup with Machine of kind OnSlide is the lathe that mills: the cutter turns in its spindle, the work stands on the vertical slide that HoldingKind names, on the
// cross slide. It is read as a mill: "x" is the dial of the lathe's cross slide, as it is marked (a dial that reads diameters moves half of what it counts), "y" that of
// the vertical slide, and "z" that of the saddle, which counts towards the headstock and so into the work. Seen from the spindle the part's X points right and Y up.
//
// A setup with Dividing lies across in the chuck of a dividing head. Its cuts also read the dial "head", which stands still in each of them: AcrossDeg is then the setup's
// own and what the count has turned the work by (Dividing). One that does not lie across stands upright on it, its axis under the spindle where x and y read nought or were wound
// back from, and is turned between the cuts: a place X, Y that the table's dials give is then turned about the axis by AskewDeg and what the count has turned the work by.
//
// A setup with Tilt stands upright on a tilting plate that is set over about the table's x. Level, the direction AlongDeg of the part lies along x, and the direction square to it in the
// end that looks at the spindle along y (as seen from the spindle, anticlockwise from x); v counts that way from the part's axis and w along it, towards the spindle. Set over by t
// the side of +v is raised, and counts n of g millimetres put the spindle's axis, or the tool's end, at
//
//	along               = ReferenceMM + n*g   by the dial "x", from the part's axis
//	v cos(t) - w sin(t) = ReferenceMM + n*g   by the dial "y"
//	v sin(t) + w cos(t) = ReferenceMM - n*g   by "quill" or "z"
//
// w is Z where the right end is free, else -Z.
//
// On a lathe a setup may carry the work off its centre (faceplate, four-jaw): R of all cuts is then counted from the place CentreX, CentreY of the part.

// OnSlide is the kind of machine that a lathe is while it mills work on a vertical slide.
const OnSlide = "slide"
