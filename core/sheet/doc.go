// Package sheet lays out paper for a block: the day's sheet of each hand, tags
// for the trees, and a cutting card at true size. What stands on a page is texts,
// lines and shapes at their places in millimetres; how wide a text is, a Font
// tells, and whoever has one turns the pages into a file.
//
// It may import the plan and all below it.
package sheet
