//! The costs and earnings of a piece, in sentences.

use workshop::market::{FEWEST, Row, Told, Trend};
use workshop::money::{Account, Guess, Outcome, Part, Reckoning};

use coatings::in_sentence;

use super::{number, percent, whole};

type Money<'a> = &'a dyn Fn(u64) -> String;

/// Says whether the piece pays off or paid off. For a set, it says how many pieces the prices cover.
pub fn buy_or_leave(account: &Account, money: Money<'_>) -> String {
    let answer = match &account.outcome {
        Some(outcome) if account.is_sold => sold(account, outcome, money),
        _ => not_sold(account, money),
    };
    match together(account.count) {
        Some(together) => format!("{answer} Prices are for {together}."),
        None => answer,
    }
}

/// Says whether to buy a piece in a word, and then what to pay or what is missing.
pub fn verdict_on_buying(account: &Account, money: Money<'_>) -> (String, String) {
    let asked = account.costs.bought;
    match (account.brings, account.most) {
        (Some(_), _) if account.is_sold => ("Sold".into(), buy_or_leave(account, money)),
        (None, _) => (
            "What will it sell for?".into(),
            format!("Enter a price, or add {FEWEST} local prices for similar pieces."),
        ),
        (Some(_), None) => ("Pass".into(), "Even free, it would lose money.".into()),
        (Some(_), Some(most)) if asked <= most => {
            ("Buy".into(), format!("Pay {} or less.", money(in_whole(most))))
        }
        (Some(_), Some(most)) => (
            "Pass".into(),
            format!(
                "Pass at {}. Offer {} or less.",
                money(asked),
                money(in_whole(most))
            ),
        ),
    }
}

/// Leaves out cents that nobody haggles over.
fn in_whole(hundredths: u64) -> u64 {
    match hundredths {
        little if little < 1_000 => little,
        much => much / 100 * 100,
    }
}

/// Says what an hour of work earns at the price they ask.
pub fn earns(account: &Account, money: Money<'_>) -> String {
    let hour = account.outcome.as_ref().and_then(|outcome| outcome.per_hour);
    match (hour, account.costs.bought) {
        (None, _) => String::new(),
        (Some(hour), 0) => format!("Free, it would earn you {} an hour.", signed(hour, money)),
        (Some(hour), bought) => format!("At {} you earn {} an hour.", money(bought), signed(hour, money)),
    }
}

/// Says which inputs of the most to pay are guesses, and what it leaves out.
pub fn rests_on(account: &Account, money: Money<'_>) -> String {
    if account.brings.is_none() {
        return String::new();
    }
    if account.rests_on_nothing() {
        return "Your time and materials are not in this. Enter your hourly rate and can prices.".into();
    }
    let guess = |guess: &Guess| match guess {
        Guess::Wage => format!("your hourly rate ({})", money(account.costs.hourly)),
        Guess::Prices => "the can prices".to_owned(),
    };
    let guesses: Vec<String> = account.guesses.iter().map(guess).collect();
    let guesses: Vec<&str> = guesses.iter().map(String::as_str).collect();
    let mut said = Vec::new();
    if !guesses.is_empty() {
        said.push(format!("We guessed {}.", super::and(&guesses)));
    }
    if !account.has_wage {
        said.push("Your time is not in this.".into());
    }
    if !account.unpriced.is_empty() {
        said.push("Some materials have no price.".into());
    }
    said.join(" ")
}

/// Says how many pieces a price covers: `both together`. Returns `None` for a single piece.
pub fn together(count: u32) -> Option<String> {
    match count {
        0 | 1 => None,
        2 => Some("both together".into()),
        count => Some(format!("all {count} together")),
    }
}

/// States the result of a sale.
fn sold(account: &Account, outcome: &Outcome, money: Money<'_>) -> String {
    let hour = outcome.per_hour.map(|hour| {
        let hour = signed(hour, money);
        match account.reckoned {
            // The hours were never entered.
            Some(_) => format!(
                ", about {hour} an hour if it took {}",
                hours_of(account.costs.minutes)
            ),
            None => format!(", {hour} an hour"),
        }
    });
    let left = format!(
        "{} for your work{}",
        money(outcome.left.unsigned_abs()),
        hour.unwrap_or_default()
    );
    let result = match account.costs.wanted() {
        _ if outcome.left < 0 => format!("You lost {}.", money(outcome.left.unsigned_abs())),
        Some(0) => format!("It left {left}."),
        Some(wanted) if i128::from(outcome.left) >= i128::from(wanted) => format!("It paid off: {left}."),
        _ if account.guesses.contains(&Guess::Wage) => format!("It left {left}."),
        _ => format!("It paid less than you wanted: {left}."),
    };
    let unpriced = match account.unpriced.is_empty() {
        true => "",
        false => " Materials without a price are not counted.",
    };
    format!("Sold for {}. {result}{unpriced}", money(outcome.price))
}

/// Says what the wanted price covers: `your hours and profit`.
pub fn wanted_for(account: &Account) -> &'static str {
    match account.costs.profit {
        0 => "your hours",
        _ => "your hours and profit",
    }
}

/// Says whether an unsold piece pays off.
fn not_sold(account: &Account, money: Money<'_>) -> String {
    let Some(brings) = account.brings else {
        let must = account.wanted.filter(|_| account.costs.hourly > 0);
        let without = match (account.unpriced.is_empty(), account.costs.materials_used) {
            (true, _) => "",
            (false, 0) => ", not counting materials, which have no price",
            (false, _) => ", not counting materials without a price",
        };
        let pays = wanted_for(account);
        let must =
            must.map(|price| format!("It must sell for {} to pay for {pays}{without}. ", money(price)));
        return format!(
            "{}Enter your asking price, or add {FEWEST} local prices for similar pieces, to see the most you should pay.",
            must.unwrap_or_default()
        );
    };
    let at = money(brings);
    let answer = match (account.most, account.costs.bought) {
        (None, _) => {
            return format!(
                "Pass. Even free, it would lose money at {at}.{}",
                with_the_hours(account, money)
            );
        }
        (Some(most), 0) => format!("Pay {} or less to sell at {at}.", money(most)),
        (Some(most), bought) if bought <= most => {
            format!(
                "Buy at {}. Sold at {at}, you could pay up to {}.",
                money(bought),
                money(most)
            )
        }
        (Some(most), bought) => {
            format!(
                "Pass at {}. To sell at {at}, pay {} or less.",
                money(bought),
                money(most)
            )
        }
    };
    let answer = match (account.unpriced.is_empty(), account.costs.materials_used) {
        (true, _) => answer,
        (false, 0) => format!("Without materials, which have no price: {}", in_sentence(&answer)),
        (false, _) => format!("Without materials that have no price: {}", in_sentence(&answer)),
    };
    // People in a hurry only read the first words.
    let answer = match account.costs.hourly {
        0 => format!("With your time unpaid: {}", in_sentence(&answer)),
        _ => answer,
    };
    let hour = if account.costs.hourly == 0 {
        " Enter your hourly pay below."
    } else {
        ""
    };
    format!(
        "{answer}{hour}{}{}",
        with_the_hours(account, money),
        chance(account)
    )
}

/// Says how the answer changes if the work takes longer than estimated, or if the piece does not pay off,
/// less time.
pub fn with_the_hours(account: &Account, money: Money<'_>) -> String {
    let known = account.brings.is_some() && account.costs.hourly > 0;
    let Some(reckoned) = account.reckoned.filter(|_| known) else {
        return String::new();
    };
    let pays = account.most.is_some_and(|most| account.costs.bought <= most);
    let (minutes, most) = match pays {
        true => (reckoned.minutes.1, reckoned.most.1),
        false => (reckoned.minutes.0, reckoned.most.0),
    };
    let takes = format!(
        " It may take {}. At {},",
        from_to(reckoned.minutes),
        hours_of(minutes)
    );
    match (pays, most) {
        (true, Some(most)) if most < account.costs.bought => {
            format!("{takes} pass, or pay {} or less.", money(in_whole(most)))
        }
        (true, Some(most)) => format!("{takes} pay {} or less.", money(in_whole(most))),
        (true, None) => format!("{takes} it loses money even free."),
        (false, Some(most)) => format!("{takes} you could pay {}.", money(in_whole(most))),
        (false, None) => format!("{takes} it still loses money."),
    }
}

/// Formats paid time to the minute, so that anyone can check the calculation: `9 h 27 min`.
pub(super) fn hours_and_minutes(minutes: u32) -> String {
    match (minutes / 60, minutes % 60) {
        (0, minutes) => format!("{minutes}\u{a0}min"),
        (hours, 0) => format!("{hours}\u{a0}h"),
        (hours, minutes) => format!("{hours}\u{a0}h {minutes}\u{a0}min"),
    }
}

/// Formats a range of minutes in hours: `3.5 to 8 h`.
fn from_to((least, most): (u32, u32)) -> String {
    let hours = |minutes: u32| number(&format!("{:.1}", f64::from(minutes) / 60.0));
    format!("{} to {}\u{a0}h", hours(least), hours(most))
}

fn chance(account: &Account) -> String {
    let say = |chance: f64| format!(" {} chance it pays at local prices.", percent(chance));
    account.chance.map(say).unwrap_or_default()
}

/// States the statistics of a kind of piece, and how certain they are.
pub fn nearby(row: &Row, money: Money<'_>) -> String {
    let kind = row.kind.map_or("Notes", |kind| kind.label());
    let hundredths = |value: f64| money(value.max(0.0).round() as u64);
    let side = |told: &Told<workshop::market::Prices>, word: &str| match told {
        Told::TooFew { count: 0 } => String::new(),
        Told::TooFew { count } => format!(" {word}: {count} so far. {FEWEST} give a typical price."),
        Told::Known(prices) => {
            let of = &prices.quartiles;
            let interval = &prices.interval;
            let trend = prices.trend().map(|trend| match trend {
                Trend::Rising => " Rising.",
                Trend::Falling => " Falling.",
            });
            format!(
                " {word}: half are {} to {}, the middle one {}. {} chance the true middle is {} to {}.{}",
                hundredths(of.lower),
                hundredths(of.upper),
                hundredths(of.median),
                percent(interval.coverage),
                hundredths(interval.low),
                hundredths(interval.high),
                trend.unwrap_or_default(),
            )
        }
    };
    let pace = match &row.pace {
        Told::Known(Some(days)) => format!(" Half are gone within {days} days."),
        Told::Known(None) => " More than half are still for sale.".into(),
        Told::TooFew { .. } => String::new(),
    };
    let reached = row
        .reached
        .map(|reached| format!(" They sell for {}% of the asking price.", whole(reached * 100.0)));
    let sides = format!("{}{}", side(&row.asked, "Asking"), side(&row.sold, "Sold"));
    if sides.is_empty() {
        return format!("{kind}: no local prices yet.");
    }
    format!("{kind}.{sides}{}{pace}", reached.unwrap_or_default())
}

/// Describes the points in a chart of notes.
pub fn points(row: &Row, money: Money<'_>) -> String {
    let highest = row.points.iter().map(|(_, price, _)| *price).max();
    highest.map_or_else(String::new, |highest| {
        format!(
            "Rings are asking prices, dots are sales, oldest on the left. The scale runs from {} to {}.",
            money(0),
            money(highest)
        )
    })
}

/// Returns the label for a line of the sum.
pub fn part_of_costs(part: Part, account: &Account) -> String {
    let hours = hours_and_minutes(account.costs.minutes);
    match part {
        Part::Bought => "Bought for".into(),
        Part::Materials => "Materials used".into(),
        Part::Wear => "Tool wear".into(),
        Part::Delivery => "Delivery".into(),
        Part::Work => match &account.reckoned {
            Some(Reckoning { minutes, .. }) => format!("Your time, {hours} ({})", from_to(*minutes)),
            None => format!("Your time, {hours}"),
        },
        Part::Profit => "Profit wanted".into(),
        Part::Fees => "Fees".into(),
    }
}

/// States what is left at the expected price.
pub fn outcome(account: &Account, money: Money<'_>) -> String {
    let Some(outcome) = &account.outcome else {
        return String::new();
    };
    let sum = |of: i64| signed(of, money);
    let hour = outcome.per_hour.map(|hour| format!(", {} an hour", sum(hour)));
    let doubt = account.reckoned.map(|reckoned| {
        let (least, most) = reckoned.per_hour(outcome.left);
        format!(" ({} to {})", sum(least), sum(most))
    });
    format!(
        "Sold at {}, it leaves {} for your time{}{}.",
        money(outcome.price),
        sum(outcome.left),
        hour.unwrap_or_default(),
        doubt.unwrap_or_default()
    )
}

/// Lists the materials that count as zero.
pub fn unpriced(names: &[String]) -> String {
    let names: Vec<&str> = names.iter().map(String::as_str).collect();
    match names.as_slice() {
        [] => String::new(),
        names => format!(
            "Not counted, because they have no price: {}. Enter what materials cost above, or can prices under Shop.",
            super::and(names)
        ),
    }
}

/// Formats a sum that may be negative.
pub fn signed(sum: i64, money: Money<'_>) -> String {
    let sign = if sum < 0 { "\u{2212}" } else { "" };
    format!("{sign}{}", money(sum.unsigned_abs()))
}

/// Formats minutes as hours, without a line break: `3.5 h`.
pub fn hours_of(minutes: u32) -> String {
    let hours = format!("{:.1}", f64::from(minutes) / 60.0);
    format!("{}\u{a0}h", number(&hours))
}

/// Says how many notes are incomplete.
pub fn lacking(count: usize) -> String {
    match count {
        0 => String::new(),
        1 => "1 price has no kind, amount or date. It isn\u{2019}t counted.".into(),
        more => format!("{more} prices have no kind, amount or date. They aren\u{2019}t counted."),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::rc::Rc;
    use units::Day;
    use workshop::{Analysis, BookEdit, Edit, invented_workshop};

    fn money(hundredths: u64) -> String {
        format!("{}", hundredths / 100)
    }

    fn of(asking: &str, bought: &str) -> Account {
        let mut workshop = invented_workshop();
        let id = workshop.pieces[0].id.clone();
        for (key, text) in [
            ("asking", asking),
            ("bought", bought),
            ("hours", "2"),
            ("materials", "0"),
        ] {
            let write = BookEdit::Write("facts", "only".into(), key.into(), text.into());
            workshop = workshop
                .apply(Edit::Piece(id.clone(), workshop::PieceEdit::Book(write)))
                .unwrap();
        }
        let hourly = BookEdit::Write("habits", "only".into(), "hourly".into(), "20".into());
        workshop = workshop.apply(Edit::Book(hourly)).unwrap();
        let analysis = Analysis::of(Rc::new(workshop));
        let account = analysis.account(&analysis.workshop().pieces[0], Day::since_1970(20_000));
        Rc::unwrap_or_clone(account).unwrap()
    }

    #[test]
    fn the_answer_says_buy_or_leave() {
        let say = |asking, bought| buy_or_leave(&of(asking, bought), &money);
        let said = say("", "50");
        assert!(
            said.starts_with("It must sell for 90 to pay for your hours."),
            "{said}"
        );
        assert_eq!(
            [45, 60, 567].map(hours_and_minutes),
            ["45\u{a0}min", "1\u{a0}h", "9\u{a0}h 27\u{a0}min"]
        );
        assert_eq!(say("100", ""), "Pay 60 or less to sell at 100.");
        assert_eq!(
            say("100", "50"),
            "Buy at 50. Sold at 100, you could pay up to 60."
        );
        assert_eq!(say("100", "70"), "Pass at 70. To sell at 100, pay 60 or less.");
        assert!(say("30", "5").starts_with("Pass."));
        let mut unpriced = of("100", "");
        unpriced.unpriced.push("Paint".into());
        assert_eq!(
            buy_or_leave(&unpriced, &money),
            "Without materials, which have no price: pay 60 or less to sell at 100."
        );
        unpriced.costs.materials_used = 500;
        assert!(buy_or_leave(&unpriced, &money).starts_with("Without materials that have no price: pay"));
    }

    #[test]
    fn after_a_sale_the_answer_is_what_it_left() {
        let mut account = of("100", "70");
        account.is_sold = true;
        assert_eq!(
            buy_or_leave(&account, &money),
            "Sold for 100. It paid less than you wanted: 30 for your work, 15 an hour."
        );
        let mut account = of("100", "20");
        account.is_sold = true;
        assert_eq!(
            buy_or_leave(&account, &money),
            "Sold for 100. It paid off: 80 for your work, 40 an hour."
        );
        account.costs.profit = 4_001;
        assert!(buy_or_leave(&account, &money).contains("less than you wanted"));
        let mut account = of("10", "20");
        account.is_sold = true;
        account.unpriced.push("Paint".into());
        assert_eq!(
            buy_or_leave(&account, &money),
            "Sold for 10. You lost 10. Materials without a price are not counted."
        );
    }

    #[test]
    fn prices_of_a_set_say_what_they_are_for() {
        let mut account = of("100", "50");
        account.count = 2;
        assert!(buy_or_leave(&account, &money).ends_with(" Prices are for both together."));
        account.count = 4;
        account.is_sold = true;
        assert!(buy_or_leave(&account, &money).ends_with(" Prices are for all 4 together."));
    }

    #[test]
    fn a_wanted_profit_is_part_of_what_it_must_bring() {
        let mut account = of("", "50");
        account.costs.profit = 1_000;
        account.wanted = Some(10_000);
        let said = buy_or_leave(&account, &money);
        assert!(
            said.starts_with("It must sell for 100 to pay for your hours and profit."),
            "{said}"
        );
    }

    #[test]
    fn hours_without_a_price_are_told() {
        let mut account = of("100", "");
        assert!(!buy_or_leave(&account, &money).contains("unpaid"));
        account.costs.hourly = 0;
        let said = buy_or_leave(&account, &money);
        assert!(
            said.starts_with("With your time unpaid: ") && said.ends_with("Enter your hourly pay below."),
            "{said}"
        );
    }

    /// Five hours estimated at 20 an hour, with a range of three to eight: 40 more, or 60 less.
    #[test]
    fn reckoned_hours_say_what_hangs_on_them() {
        let mut account = of("200", "50");
        account.reckoned = Some(Reckoning {
            minutes: (180, 480),
            most: (Some(14_000), Some(4_000)),
        });
        let mut say = |most, of_hours| {
            account.most = most;
            account.reckoned = account.reckoned.map(|reckoned| Reckoning {
                most: of_hours,
                ..reckoned
            });
            buy_or_leave(&account, &money).replace('\u{a0}', " ")
        };
        assert_eq!(
            say(Some(10_000), (Some(14_000), Some(4_000))),
            "Buy at 50. Sold at 200, you could pay up to 100. It may take 3.0 to 8.0 h. At 8.0 h, pass, or pay 40 or less."
        );
        assert!(say(Some(6_000), (Some(10_000), None)).ends_with("At 8.0 h, it loses money even free."));
        assert!(say(Some(4_000), (Some(8_000), None)).ends_with("At 3.0 h, you could pay 80."));
        assert!(say(None, (Some(8_000), None)).ends_with("At 3.0 h, you could pay 80."));
        assert!(say(None, (None, None)).ends_with("At 3.0 h, it still loses money."));
        assert_eq!(
            outcome(&account, &money),
            "Sold at 200, it leaves 150 for your time, 75 an hour (18 to 50)."
        );
    }

    #[test]
    fn a_loss_is_told_as_one() {
        assert_eq!(
            outcome(&of("100", "20"), &money),
            "Sold at 100, it leaves 80 for your time, 40 an hour."
        );
        assert_eq!(
            outcome(&of("10", "20"), &money),
            "Sold at 10, it leaves \u{2212}10 for your time, \u{2212}5 an hour."
        );
    }
}
