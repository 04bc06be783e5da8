//! The results for screen readers, announced after a change.

use gloo::timers::callback::Timeout;
use yew::prelude::*;

/// How long the results must stay the same before they are announced, in milliseconds. This avoids
/// announcements during typing.
const REST: u32 = 1_500;

#[derive(Properties, PartialEq)]
pub struct Props {
    /// The sentence.
    pub text: String,
}

/// A sentence for screen readers only.
#[component]
pub fn Spoken(props: &Props) -> Html {
    let said = use_state(String::new);
    use_effect_with(props.text.clone(), {
        let said = said.setter();
        move |text| {
            let text = text.clone();
            let later = Timeout::new(REST, move || said.set(text));
            // Another change within the delay restarts it.
            || drop(later)
        }
    });
    html! { <p id="spoken" class="unseen" role="status">{ &*said }</p> }
}
