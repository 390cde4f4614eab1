package store

import ("testing";"os")

func TestHang(t *testing.T) {
	src, _ := os.ReadFile(os.Getenv("HURT"))
	p := t.TempDir()+"/x"
	os.WriteFile(p, src, 0o600)
	readHurt(t, p, "")
}
