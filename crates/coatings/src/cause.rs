//! The causes of uncertainty of an amount.

use crate::distribution::Distribution;
use crate::material::Material;
use crate::propagate::Input;
use crate::sourced_range::{Provenance, SourcedRange};
use crate::substrate::Substrate;
use crate::tool::{Retention, Tool};
use crate::unit::{Metres, SquareMetresPerLitre, Unit};

/// A cause of uncertainty of an amount.
#[derive(Clone, Debug, PartialEq)]
pub enum Cause {
    /// The areas were measured.
    Measuring,
    /// How thick a coat of a material a tool leaves.
    Film {
        /// The name of the material.
        material: String,
        /// The tool.
        tool: &'static str,
    },
    /// How far a liter goes by the label.
    LabelRate {
        /// The name of the material.
        material: String,
    },
    /// How far a liter goes with a tool by the maker's own jobs.
    OwnRate {
        /// The name of the material.
        material: String,
        /// The tool.
        tool: &'static str,
    },
    /// How much of what leaves the tool stays on the piece.
    Transfer {
        /// The tool.
        tool: &'static str,
    },
    /// How much of the spray misses narrow parts.
    Narrow {
        /// The tool.
        tool: &'static str,
    },
    /// The ordinary loss of brush and roller, which a label's rate contains.
    OrdinaryLoss,
    /// How much more the first coat takes.
    FirstCoat {
        /// What it goes onto.
        substrate: Substrate,
    },
    /// What stays in the tool.
    Kept {
        /// The tool.
        tool: &'static str,
        /// Where in it.
        place: &'static str,
    },
}

impl Cause {
    /// Its label.
    pub fn label(&self) -> String {
        match self {
            Cause::Measuring => "your measurements".into(),
            Cause::Film { material, tool } => {
                format!(
                    "coat thickness of {} with the {}",
                    in_sentence(material),
                    in_sentence(tool)
                )
            }
            Cause::LabelRate { material } => format!("coverage of {}", in_sentence(material)),
            Cause::OwnRate { material, tool } => {
                format!(
                    "coverage of {} with the {}, from your weighed jobs",
                    in_sentence(material),
                    in_sentence(tool)
                )
            }
            Cause::Transfer { tool } => {
                format!("overspray and drips from the {}", in_sentence(tool))
            }
            Cause::Narrow { tool } => format!("loss past narrow parts with the {}", in_sentence(tool)),
            Cause::OrdinaryLoss => "normal loss, already in the label's rate".into(),
            Cause::FirstCoat { substrate } => format!("how much {} soaks up", in_sentence(substrate.label())),
            Cause::Kept { tool, place } => format!("what stays in the {}'s {place}", in_sentence(tool)),
        }
    }
}

/// A name within a sentence: its first letter is small, unless another capital follows.
///
/// # Example
/// ```
/// assert_eq!(coatings::in_sentence("Mini foam roller"), "mini foam roller");
/// assert_eq!(coatings::in_sentence("HVLP sprayer"), "HVLP sprayer");
/// assert_eq!(coatings::in_sentence("Harbor Blue"), "Harbor Blue");
/// ```
pub fn in_sentence(name: &str) -> String {
    let mut letters = name.chars();
    match letters.next() {
        Some(first)
            if !letters
                .as_str()
                .contains(|other: char| other.is_ascii_uppercase()) =>
        {
            format!("{}{}", first.to_ascii_lowercase(), letters.as_str())
        }
        _ => name.into(),
    }
}

/// A cause with its distribution and the name that seeds its draws.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct UncertainInput {
    pub(crate) cause: Cause,
    pub(crate) input: Input,
    pub(crate) source: &'static str,
    pub(crate) certainty: Provenance,
}

/// The share of paint that reaches the piece from a brush or a roller. A label's rate contains the rest, so it is taken
/// out again where a sprayer's own loss comes in.
pub(crate) const ORDINARY: SourcedRange = SourcedRange::practice(0.95, 1.0);

impl UncertainInput {
    fn of<U: Unit>(cause: Cause, name: String, figure: SourcedRange<U>) -> Self {
        UncertainInput {
            cause,
            input: Input {
                name,
                distribution: figure.distribution(),
            },
            source: figure.source,
            certainty: figure.certainty,
        }
    }

    pub(crate) fn film(material: &Material, tool: &'static Tool, film: SourcedRange<Metres>) -> Self {
        let cause = Cause::Film {
            material: material.name.to_string(),
            tool: tool.name,
        };
        UncertainInput::of(cause, format!("film/{}/{}", material.key, tool.key), film)
    }

    pub(crate) fn label_rate(material: &Material) -> Self {
        let cause = Cause::LabelRate {
            material: material.name.to_string(),
        };
        UncertainInput::of(cause, format!("rate/{}", material.key), material.label_rate)
    }

    pub(crate) fn own_rate(
        material: &Material,
        tool: &'static Tool,
        rate: SourcedRange<SquareMetresPerLitre>,
    ) -> Self {
        let cause = Cause::OwnRate {
            material: material.name.to_string(),
            tool: tool.name,
        };
        UncertainInput::of(cause, format!("own-rate/{}/{}", material.key, tool.key), rate)
    }

    pub(crate) fn transfer(tool: &'static Tool) -> Self {
        let name = format!("transfer/{}", tool.key);
        UncertainInput::of(Cause::Transfer { tool: tool.name }, name, tool.transfer)
    }

    pub(crate) fn narrow(tool: &'static Tool) -> Self {
        let name = format!("narrow/{}", tool.key);
        UncertainInput::of(Cause::Narrow { tool: tool.name }, name, tool.narrow_transfer)
    }

    pub(crate) fn ordinary_loss() -> Self {
        UncertainInput::of(Cause::OrdinaryLoss, "ordinary-loss".into(), ORDINARY)
    }

    pub(crate) fn first_coat(substrate: Substrate) -> Self {
        let name = format!("first-coat/{}", substrate.key());
        UncertainInput::of(Cause::FirstCoat { substrate }, name, substrate.first_coat())
    }

    /// The material lost in one cleaning of a tool. Each job, material and color has its own cleanings.
    pub(crate) fn kept(wash: &str, tool: &'static Tool, keeps: &Retention) -> Self {
        let cause = Cause::Kept {
            tool: tool.name,
            place: keeps.place,
        };
        let name = format!("kept/{wash}/{}/{}", tool.key, keeps.place);
        UncertainInput::of(cause, name, keeps.litres)
    }

    /// One of the independent measuring errors: a standard normal variable.
    pub(crate) fn measuring(job: &str, number: usize) -> Self {
        UncertainInput {
            cause: Cause::Measuring,
            input: Input {
                name: format!("measuring/{job}/{number}"),
                distribution: Distribution::Normal {
                    mean: 0.0,
                    standard_uncertainty: 1.0,
                },
            },
            source: "the measurements of the piece",
            certainty: Provenance::Maker,
        }
    }
}
