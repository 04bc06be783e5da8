//! A photo in a line of a book.

use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::HtmlInputElement;
use yew::prelude::*;

use super::Form;
use crate::browser::device;
use crate::state::{Action, Message};

impl Form<'_> {
    pub(super) fn picture(&self, key: &str, label: &str) -> Html {
        let id = self.id(key);
        let element = id.element();
        let picture = self.text(key);
        let is_taken = !picture.is_empty();
        let gone = self.set(key).reform(|_: MouseEvent| String::new());
        html! {
            <div class="field photo">
                if is_taken {
                    <img src={picture} alt={label.to_owned()} />
                    <button type="button" id={format!("{element}-gone")} onclick={gone}>{ "Delete photo" }</button>
                }
                <label class="button" for={element.clone()}>{ if is_taken { "Replace photo" } else { "Add photo" } }</label>
                <input id={element} type="file" class="unseen" accept="image/*" onchange={self.take(key)} />
            </div>
        }
    }

    fn take(&self, key: &str) -> Callback<Event> {
        let (set, send) = (self.set(key), self.send.clone());
        Callback::from(move |event: Event| {
            let Some(input) = event.target().and_then(|t| t.dyn_into::<HtmlInputElement>().ok()) else {
                return;
            };
            let Some(file) = input.files().and_then(|files| files.get(0)) else {
                return;
            };
            let (set, send) = (set.clone(), send.clone());
            spawn_local(async move {
                let picture = device::small_photo(&file).await;
                // Clear the input so that the same file can be chosen again.
                input.set_value("");
                match picture {
                    Ok(picture) => set.emit(picture),
                    Err(reason) => send.emit(Action::Tell(Message::Plain(reason))),
                }
            });
        })
    }
}
