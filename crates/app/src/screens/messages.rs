//! Messages to the maker, with buttons to dismiss them.

use workshop::{Edit, Workshop};
use yew::prelude::*;

use super::Send;
use crate::state::{Action, App, Message};
use crate::words;

/// Shows the list of messages, which is usually empty.
pub fn messages(app: &App, send: &Send) -> Html {
    let message = |(place, message): (usize, &Message)| {
        let away = send.reform(move |_: MouseEvent| Action::PutAway(place));
        match message {
            Message::Plain(words) | Message::Done(words) => html! {
                <li><p>{ words }</p><button type="button" onclick={away}>{ "Dismiss" }</button></li>
            },
            Message::Opened(workshop) => opened(app, workshop, place, send, away),
        }
    };
    html! { <div id="messages" role="alert"><ul>{ for app.messages.iter().enumerate().map(message) }</ul></div> }
}

fn opened(app: &App, workshop: &Workshop, place: usize, send: &Send, away: Callback<MouseEvent>) -> Html {
    let take = |edit: fn(Workshop) -> Edit| {
        let (send, workshop) = (send.clone(), workshop.clone());
        move || {
            send.emit(Action::PutAway(place));
            send.emit(Action::Edit(edit(workshop.clone())));
        }
    };
    let (gather, replace) = (take(Edit::Gather), take(Edit::Replace));
    let gather = {
        let (send, ours, theirs) = (send.clone(), app.workshop.clone(), workshop.clone());
        move |_: MouseEvent| {
            let fits = ours.apply(Edit::Gather(theirs.clone())).is_ok();
            gather();
            // Report settings that are not imported. If nothing was imported, the edit reports why.
            let words = words::gathered(&ours.along(&theirs)).filter(|_| fits);
            if let Some(words) = words {
                send.emit(Action::Tell(Message::Done(words)));
            }
        }
    };
    let names: Vec<&str> = workshop
        .pieces
        .iter()
        .map(|piece| piece.name.as_str())
        .take(5)
        .collect();
    let others = workshop.pieces.len() - names.len();
    let more = if others > 0 {
        format!(" and {others} more")
    } else {
        String::new()
    };
    html! {
        <li>
            <p>{ format!("Ready to add: {}{more}.", names.join(", ")) }</p>
            <button type="button" id="gather-file" class="main" onclick={gather}>{ "Add to this workshop" }</button>
            <button type="button" id="replace-file" onclick={move |_: MouseEvent| replace()}>{ "Replace this workshop" }</button>
            <button type="button" onclick={away}>{ "Don\u{2019}t add" }</button>
        </li>
    }
}
