package catalog

import (
	"tentwright/catalog/money"
	"tentwright/catalog/source"
)

// Item is a line that a customer can order beside the tents: an accessory, a
// kit or a service.
type Item struct {
	Where    source.Where
	ID       string       `yaml:"id,required" long:"60"`
	Name     string       `yaml:"name,required" long:"120"`
	Section  string       `yaml:"section,required" long:"60"` // of the quote
	Unit     string       `yaml:"unit,required" enum:"each|pair|set|ft|m|sq ft|sq m|day|hour|gal|l"`
	Contents []Content    `yaml:"contents"`
	Price    money.Number `yaml:"price" min:"0"`
	Free     bool         `yaml:"free"`
	Cost     money.Number `yaml:"cost" min:"0"` // to the yard, for one hire of one
	Period   string       `yaml:"period,required"`
	Tax      string       `yaml:"tax,required"`
	Breaks   string       `yaml:"breaks"`
	SubHire  *SubHire     `yaml:"sub_hire"`
	Kind     string       `yaml:"kind,required" enum:"hire|sale|service"` // the damage waiver is on hire only
	Geometry bool         `yaml:"geometry"`                               // its parts and quantity come from a tent: walls, gutters
	Needs    []string     `yaml:"needs"`                                  // items without which it is of no use
	Describe string       `yaml:"describe"`
}

// Content is one thing in an item: a part, or another item of a kit.
type Content struct {
	Where source.Where
	Part  string       `yaml:"part"`
	Item  string       `yaml:"item"`
	Count money.Number `yaml:"count,required" min:"0"` // per one of the item; rounded up for each line of a job
}

// SubHire is an item that the yard hires in from someone else.
type SubHire struct {
	Where  source.Where
	From   string       `yaml:"from,required"`
	Cost   money.Number `yaml:"cost,required" min:"0"`
	Markup money.Number `yaml:"markup,required" min:"0" max:"500"` // percent on cost
}

// itemPrice is what one of the item costs the customer at the base rate: its
// own price, or for a sub-hired one the supplier's cost and the mark-up.
func (c *Catalog) itemPrice(it *Item) money.Number {
	if it.SubHire == nil || !it.Price.IsZero() {
		return it.Price
	}
	factor := money.One.Add(money.Percent(it.SubHire.Markup))
	return it.SubHire.Cost.Mul(factor)
}

// ItemPrice is the base price of one, rounded to the shop's currency.
func (c *Catalog) ItemPrice(it *Item) money.Number { return c.Currency().Round(c.itemPrice(it)) }

// ItemCost is what one hire of one costs the yard.
func (c *Catalog) ItemCost(it *Item) money.Number {
	if it.SubHire != nil {
		return it.SubHire.Cost
	}
	return it.Cost
}

// Currency is the shop's.
func (c *Catalog) Currency() money.Currency {
	currency, _ := money.CurrencyOf(c.Company.Currency)
	return currency
}
