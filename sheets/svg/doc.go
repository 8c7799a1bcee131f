// Package svg writes a drawn page as an SVG image.
//
// In flows a draw.Page in millimetres; out flow bytes: a file that stands by itself, or an element to be set into an HTML page that carries
// Style. One unit of the image is one millimetre on paper.
//
// What holds after: the same page gives the same bytes; every coordinate has the same number of decimals; text is escaped; ids carry the
// page's name, so that many images can stand in one HTML page.
package svg
