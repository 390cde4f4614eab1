package core

// AgainstAdvice is work gone on with although the verdict was another.
type AgainstAdvice struct {
	Verdict Verdict
	Why     string
}

// Kind is against-advice.
func (*AgainstAdvice) Kind() string { return "against-advice" }

func (b *AgainstAdvice) fields(f fields) {
	word(f, "verdict", &b.Verdict)
	f.text("why", &b.Why)
}

func (b *AgainstAdvice) check() error { return oneOf("verdict", b.Verdict, false, Verdicts...) }

func (b *AgainstAdvice) apply(_ *Stump, a *Attempt, e Event) {
	a.Against = append(a.Against, said(e, *b))
}
