//! The costs of a piece, the prices that cover them, and whether to buy it.

use workshop::book::OF_MONEY;
use workshop::money::{Account, Earning, Earnings, Line};
use yew::prelude::*;

use super::book::only;
use super::{Shown, money as prices_of, money_of, refused, saved};
use crate::browser::today;
use crate::parts::button;
use crate::state::{Action, DraftId, Screen};
use crate::words;

/// Shows the money tab.
pub fn sheet(shown: &Shown) -> Html {
    let Shown { app, send, .. } = shown;
    let account = app.analysis().account(&shown.piece, today());
    let Some(account) = account.as_ref().as_ref().filter(|_| shown.takeoff().is_some()) else {
        return html! { <p>{ "Correct the sizes to see what it costs." }</p> };
    };
    let money = money_of(account);
    let notes = send.reform(|_: MouseEvent| Action::Screen(Screen::Prices));
    let is_blocked = app.is_blocked(DraftId::is_of_money);
    html! {
        <section class="money" aria-labelledby="money-title">
            <h2 id="money-title">{ "Money" }</h2>
            { refused::answer(app, DraftId::is_of_money, || verdict(shown, account, &money)) }
            <h3>{ words::together(account.count).map_or("This piece".into(), words::sentence) }</h3>
            { only(app, send, "facts", &["status", "bought", "asking", "sold", "sold-on", "hours", "materials", "delivery"]) }
            <h3>{ "Every piece" }</h3>
            { only(app, send, "habits", &OF_MONEY) }
            // Text that appears and disappears is below the fields, so that no field moves.
            <p class="against">{ words::unpriced(&account.unpriced) }</p>
            if !is_blocked { { sum(account, &money) } }
            <p id="nearby">{ words::nearby(&account.nearby, &money) }</p>
            { button("price-notes", "Local prices", notes) }
            if !is_blocked { { more_coats(account, &money) } }
            { refused::answer(app, DraftId::is_of_money, || earns(shown)) }
        </section>
    }
}

type Money<'a> = &'a dyn Fn(u64) -> String;

/// Shows the earnings from pieces that were sold, and those expected from pieces that have a price.
fn earns(shown: &Shown) -> Html {
    let app = &shown.app;
    let earnings = app.analysis().earnings();
    let Earnings { each, together } = &*earnings;
    if each.is_empty() {
        return Html::default();
    }
    let money = prices_of(app);
    let signed = |sum: i64| words::signed(sum, &money);
    let row = |of: &Earning| {
        let together = words::together(of.count).map(|together| format!(", {together}"));
        let how = if of.is_sold { " sold" } else { " asking" };
        html! {
            <tr>
                <th scope="row">{ &of.name }<span class="with">{ how }{ together }</span></th>
                <td>{ money(of.outcome.price) }</td>
                <td>{ words::hours_of(of.minutes) }</td>
                <td>{ signed(of.outcome.left) }</td>
                <td>{ of.outcome.per_hour.map(signed) }</td>
            </tr>
        }
    };
    let all = together.map(|(left, per_hour)| {
        let hour = per_hour.map_or_else(String::new, |hour| format!(", or {} an hour", signed(hour)));
        format!("Sold pieces earned you {}{hour}.", signed(left))
    });
    html! {
        <>
            <h2>{ "All pieces" }</h2>
            <div class="wide-table" tabindex="0" role="region" aria-label="All pieces">
                <table class="sum earned"><thead><tr>
                    <th scope="col">{ "Piece" }</th><th scope="col">{ "Price" }</th><th scope="col">{ "Hours" }</th>
                    <th scope="col">{ "Left for your time" }</th><th scope="col">{ "Per hour" }</th>
                </tr></thead><tbody>{ for each.iter().map(row) }</tbody></table>
            </div>
            <p id="earned">{ all }</p>
            { saved::file(shown, saved::EARNINGS) }
        </>
    }
}

/// Shows the key prices and the hourly pay.
fn verdict(shown: &Shown, account: &Account, money: Money<'_>) -> Html {
    let price = |price: Option<u64>| price.map_or_else(|| "\u{2013}".into(), money);
    let is_paid = account.costs.hourly > 0;
    let most = match is_paid {
        true => "Most you should pay",
        false => "Most you should pay, your time unpaid",
    };
    let hour = account.outcome.as_ref().and_then(|outcome| outcome.per_hour);
    let hour = hour.map_or_else(|| "\u{2013}".into(), |hour| words::signed(hour, money));
    html! {
        <>
            <p class={classes!("verdict", shown.waits())} aria-busy={shown.waiting.is_some().to_string()} id="buy-or-leave" role="status">{ words::buy_or_leave(account, money) }</p>
            <dl class={classes!("totals", shown.waits())}>
                <div><dt>{ "Break-even, not counting your time" }</dt><dd id="lowest">{ price(account.lowest.filter(|lowest| *lowest > 0)) }</dd></div>
                <div><dt>{ format!("Price that pays for {}", words::wanted_for(account)) }</dt><dd id="wanted">{ price(account.wanted.filter(|_| is_paid)) }</dd></div>
                <div><dt>{ most }</dt><dd id="most">{ price(account.most) }</dd></div>
                <div><dt>{ "You earn per hour" }</dt><dd id="per-hour">{ hour }</dd></div>
            </dl>
        </>
    }
}

/// Shows the sum line by line, with what is left.
fn sum(account: &Account, money: Money<'_>) -> Html {
    let line = |line: Line| {
        html! {
            <tr>
                <th scope="row">{ words::part_of_costs(line.part, account) }</th>
                <td>{ line.amount.map_or_else(|| "\u{2013}".into(), money) }</td>
            </tr>
        }
    };
    html! {
        <>
            <table class="sum"><tbody>{ for account.costs.lines(account.brings).into_iter().map(line) }</tbody></table>
            <p id="outcome">{ words::outcome(account, money) }</p>
        </>
    }
}

fn more_coats(account: &Account, money: Money<'_>) -> Html {
    let line = |(name, more): &(String, i64)| {
        html! { <li>{ format!("{name}: {}", money(more.unsigned_abs())) }</li> }
    };
    html! { <>
        if !account.more_coats.is_empty() {
            <p>{ format!("What one more coat adds to the price that pays for {}:", words::wanted_for(account)) }</p>
            <ul id="more-coats">{ for account.more_coats.iter().map(line) }</ul>
        }
        if !account.of_art.is_empty() {
            <p>{ "Leaf, stencils, transfers and paper add:" }</p>
            <ul id="of-art">{ for account.of_art.iter().map(line) }</ul>
        }
    </> }
}
