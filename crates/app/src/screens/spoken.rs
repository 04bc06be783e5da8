//! The answer, told to a screen reader once it has changed.

use gloo::timers::callback::Timeout;
use yew::prelude::*;

/// How long the answer stays as it is before it is said, milliseconds: while one types nothing is said.
const REST: u32 = 1_500;

#[derive(Properties, PartialEq)]
pub struct Props {
    /// The sentence.
    pub text: String,
}

/// A sentence that is heard and not seen.
#[component]
pub fn Spoken(props: &Props) -> Html {
    let said = use_state(String::new);
    use_effect_with(props.text.clone(), {
        let said = said.setter();
        move |text| {
            let text = text.clone();
            let later = Timeout::new(REST, move || said.set(text));
            // A further change before that puts it off.
            || drop(later)
        }
    });
    html! { <p id="spoken" class="unseen" role="status">{ &*said }</p> }
}
