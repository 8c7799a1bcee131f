package sequence

// maxHangs is the most operations a verdict may hang on for its answers to be tabled: 64 answers are one machine word.
const maxHangs = 6

// condition is the table of all answers of Problem.Allowed on one alternative. Bit i of a place in the table stands for ops[i].
type condition struct {
	ops  []int
	yes  uint64 // places where the alternative is allowed
	sane uint64 // places that precedence lets happen
}

// tabulate asks for every answer on an alternative that hangs on the given operations.
func tabulate(ops []int, pred []Set, allowed func(done Set) bool) *condition {
	c := &condition{ops: ops}
	hangs := SetOf(ops...)
	for place := range uint64(1) << len(ops) {
		done := c.set(place)
		sane := true
		for _, op := range done.Ops() {
			sane = sane && pred[op]&hangs&^done == 0
		}
		if !sane {
			continue
		}
		c.sane |= 1 << place
		if allowed(done) {
			c.yes |= 1 << place
		}
	}
	return c
}

// place returns the place in the table for what is done, set the operations a place stands for.
func (c *condition) place(done Set) uint64 {
	var place uint64
	for i, op := range c.ops {
		place |= uint64(done>>op&1) << i
	}
	return place
}

func (c *condition) set(place uint64) Set {
	var s Set
	for i, op := range c.ops {
		if place>>i&1 != 0 {
			s = s.With(op)
		}
	}
	return s
}

func (c *condition) holds(done Set) bool { return c.yes>>c.place(done)&1 != 0 }

// always reports whether the alternative is allowed wherever precedence lets the work come.
func (c *condition) always() bool { return c.sane&^c.yes == 0 }

// withBit[i] holds the places in which operation i of a table is done.
var withBit = [maxHangs]uint64{
	0xaaaaaaaaaaaaaaaa, 0xcccccccccccccccc, 0xf0f0f0f0f0f0f0f0, 0xff00ff00ff00ff00, 0xffff0000ffff0000, 0xffffffff00000000,
}

// needs returns the operations done in all places where the alternative is allowed, bars those done in none of them.
func (c *condition) needs() (s Set) {
	for i, op := range c.ops {
		if c.yes&^withBit[i] == 0 {
			s = s.With(op)
		}
	}
	return s
}

func (c *condition) bars() (s Set) {
	for i, op := range c.ops {
		if c.yes&withBit[i] == 0 {
			s = s.With(op)
		}
	}
	return s
}

// idle returns operations that change no answer, one at a time: the others are enough to tell the verdict.
func (c *condition) idle() Set {
	var s Set
	yes, sane := c.yes, c.sane
	for i, op := range c.ops {
		shift := 1 << i
		both := sane & (sane >> shift) &^ withBit[i]
		if (yes^yes>>shift)&both != 0 {
			continue
		}
		s = s.With(op)
		yes, sane = spread(yes, i), spread(sane, i)
	}
	return s
}

// spread makes a table the same with and without its operation i.
func spread(places uint64, i int) uint64 {
	shift := 1 << i
	places |= places & ^withBit[i] << shift
	return places | places&withBit[i]>>shift
}

// rising returns the table in which the alternative stays allowed once it is: the places that contain an allowed place.
func (c *condition) rising() uint64 {
	up := c.yes
	for i := range c.ops {
		up |= up & ^withBit[i] << (1 << i)
	}
	return up
}

// harm returns the places, op not done in them, in which the alternative is allowed and would not be with op done too.
func (c *condition) harm(op int) uint64 {
	for i, o := range c.ops {
		if o == op {
			shift := 1 << i
			return c.yes & ^withBit[i] & (c.sane >> shift) & ^(c.yes >> shift)
		}
	}
	return 0
}

// later returns the places that can still come from the given place on: those that contain it.
func later(place uint64) uint64 {
	all := ^uint64(0)
	for i := range maxHangs {
		if place>>i&1 != 0 {
			all &= withBit[i]
		}
	}
	return all
}
