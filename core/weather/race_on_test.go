//go:build race

package weather

const raced = true
