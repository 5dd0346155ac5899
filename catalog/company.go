package catalog

import (
	"tentwright/catalog/money"
	"tentwright/catalog/source"
	"tentwright/catalog/unit"
)

// Company is who hires the tents out: what stands on the letterhead, and how
// the office writes money, lengths and paper.
type Company struct {
	Where    source.Where
	Name     string      `yaml:"name,required" long:"120"`
	Motto    string      `yaml:"motto" long:"120"`
	Address  []string    `yaml:"address,required"`
	Phone    string      `yaml:"phone"`
	Email    string      `yaml:"email"`
	Web      string      `yaml:"web"`
	Currency string      `yaml:"currency,required"` // ISO 4217
	Units    unit.System `yaml:"units,required" enum:"imperial|metric"`
	Paper    string      `yaml:"paper,required" enum:"letter|a4"`
	Logo     string      `yaml:"logo"`    // file in the shop folder, PNG or JPEG
	Terms    string      `yaml:"terms"`   // text file in the shop folder
	Payment  string      `yaml:"payment"` // text file in the shop folder
	Quote    QuoteTerms  `yaml:"quote,required"`
}

// QuoteTerms are the dates and shares of money that a quote promises.
type QuoteTerms struct {
	Where       source.Where
	ValidDays   int          `yaml:"valid_days,required" min:"1" max:"365"`
	Deposit     money.Number `yaml:"deposit,required" min:"0" max:"100"` // percent of the total
	BalanceDays int          `yaml:"balance_days,required" min:"0" max:"365"`
	ShowPrices  string       `yaml:"show_prices,required" enum:"line|section|total"`
}

// Valid is how the last day of a quote is counted.
func (q *QuoteTerms) Valid() DayFrom { return DayFrom{From: FromQuoted, Days: q.ValidDays} }

// ValidUntil is the last day of a quote of some day.
func (q *QuoteTerms) ValidUntil(quoted unit.Date) unit.Date { return quoted.AddDays(q.Valid().Days) }

// Balance is how the last day for paying the rest is counted.
func (q *QuoteTerms) Balance() DayFrom { return DayFrom{From: FromDeliver, Days: -q.BalanceDays} }

// BalanceBy is the last day for paying the rest of a job delivered on some day.
func (q *QuoteTerms) BalanceBy(deliver unit.Date) unit.Date {
	return deliver.AddDays(q.Balance().Days)
}
