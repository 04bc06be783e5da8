//! Should I buy it? The answer, the most to pay, and the sum behind it.

use workshop::money::{Account, Line, Part};
use yew::prelude::*;

use super::book::only;
use super::measure::fields;
use super::{Shown, money_of, refused};
use crate::browser::today;
use crate::parts::fold;
use crate::state::{Action, DraftId};
use crate::words;

/// A function that formats a sum in the workshop's currency.
type Money<'a> = &'a dyn Fn(u64) -> String;

/// Shows the answer and what it depends on.
pub fn verdict(shown: &Shown) -> Html {
    let Shown { app, send, .. } = shown;
    let close = send.reform(|_: MouseEvent| Action::Back);
    let account = app.analysis().account(&shown.piece, today());
    let account = account.as_ref().as_ref().filter(|_| shown.takeoff().is_some());
    html! {
        <section class="verdict-screen" aria-labelledby="verdict-title">
            <div class="top">
                <h2 id="verdict-title">{ "Should I buy it?" }</h2>
                <button type="button" id="close-verdict" class="act" onclick={close}>{ "Close" }</button>
            </div>
            <div class="columns">
                <div>
                    // The answer is below the prices, so that no field moves while somebody types.
                    { only(app, send, "facts", &["bought", "asking"]) }
                    { match account {
                        Some(account) => refused::answer(app, DraftId::is_of_money, || answer(account, &money_of(account))),
                        None => super::amounts::problems(shown),
                    } }
                    { only(app, send, "facts", &["status"]) }
                    <h3>{ "Size" }</h3>
                    <div class="sizes">{ fields(shown, &shown.piece.furniture(), true) }</div>
                    { only(app, send, "habits", &["hourly", "fee-share"]) }
                    { more(shown) }
                </div>
                <div>
                    if let Some(account) = account.filter(|_| !app.is_blocked(DraftId::is_of_money)) { { ledger(account, &money_of(account)) } }
                </div>
            </div>
        </section>
    }
}

/// Shows what else counts: delivery, other fees and costs, and hours that the maker knows better.
fn more(shown: &Shown) -> Html {
    let Shown { app, send, .. } = shown;
    let is_open = app.unfolded.contains("verdict-more");
    let content = || {
        html! {
            <>
                { only(app, send, "facts", &["hours", "materials", "delivery"]) }
                { only(app, send, "habits", &["profit", "fee", "wear"]) }
            </>
        }
    };
    fold(
        "verdict-more",
        ("Hours, delivery, other costs".into(), String::new()),
        is_open,
        send.reform(Action::Fold),
        &content,
    )
}

fn answer(account: &Account, money: Money<'_>) -> Html {
    let (verdict, lead) = words::verdict_on_buying(account, money);
    html! {
        <>
            <p class="huge" id="buy-or-leave" role="status">{ verdict }</p>
            <p class="lead" id="most">{ lead }</p>
            { rule(account, money) }
            <p id="per-hour">{ words::earns(account, money) }</p>
            <p id="by-hours">{ words::with_the_hours(account, money) }</p>
            <p class="hint" id="rests-on">{ words::rests_on(account, money) }</p>
        </>
    }
}

/// The length of the price rule, in drawing units.
const RULE: f64 = 400.0;

/// Draws the prices that pay on a rule, with the price they ask.
fn rule(account: &Account, money: Money<'_>) -> Html {
    let Some(most) = account.most.filter(|most| *most > 0) else {
        return Html::default();
    };
    let asked = account.costs.bought;
    let end = round_up(most.max(asked) * 5 / 4);
    let at = |price: u64| price.min(end) as f64 / end as f64 * RULE;
    let tick = |n: u32| {
        let x = RULE * f64::from(n) / 4.0;
        let price = end * u64::from(n) / 4;
        let anchor = match n {
            0 => "start",
            4 => "end",
            _ => "middle",
        };
        html! { <><path class="mark" d={format!("M{x:.0} 30V46")} /><text x={format!("{x:.0}")} y="64" text-anchor={anchor}>{ money(price) }</text></> }
    };
    html! {
        <svg class="price-rule" viewBox={format!("-6 -4 {} 74", RULE + 12.0)} role="img" aria-label={format!("Most {}", money(most))}>
            <path class="not" d={format!("M0 30H{RULE}")} />
            <path class="pay" d={format!("M0 30H{:.1}", at(most))} />
            { for (0..=4).map(tick) }
            <path class="most" d={format!("M{:.1} 14V42", at(most))} />
            if asked > 0 { <path class="ask" d={format!("M{x:.1} 27l-8 -14h16z", x = at(asked))} /> }
        </svg>
    }
}

/// Rounds up to a price that is easy to read, in hundredths.
fn round_up(price: u64) -> u64 {
    let steps = [
        1, 2, 4, 10, 20, 40, 100, 200, 400, 1000, 2000, 4000, 10_000, 40_000, 100_000,
    ];
    let fits = steps
        .iter()
        .map(|step| step * 1_000_u64)
        .find(|end| *end >= price);
    fits.unwrap_or(price.max(1))
}

/// Shows the sum from the price it sells for down to the most to pay.
fn ledger(account: &Account, money: Money<'_>) -> Html {
    let Some(brings) = account.brings else {
        return Html::default();
    };
    let line = |line: Line| {
        let amount = line
            .amount
            .filter(|amount| *amount > 0 && line.part != Part::Bought)?;
        Some(html! {
            <tr><th scope="row">{ words::part_of_costs(line.part, account) }</th><td>{ format!("\u{2212}{}", money(amount)) }</td></tr>
        })
    };
    let most = account.most.map_or_else(|| "Less than nothing".to_owned(), money);
    html! {
        <table class="ledger">
            <caption class="unseen">{ "Math for the most you should pay" }</caption>
            <tbody>
                <tr><th scope="row">{ "Sells for" }</th><td>{ money(brings) }</td></tr>
                { for account.costs.lines(account.brings).into_iter().filter_map(line) }
                <tr class="sum"><th scope="row">{ "Most you should pay" }</th><td>{ most }</td></tr>
            </tbody>
        </table>
    }
}
