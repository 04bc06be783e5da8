//! How the page stands on this device: whether it works without a network, and how safe what it keeps is.

/// How the page stands without a network.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Offline {
    /// It does not work without one yet, or this browser cannot keep it.
    #[default]
    NotYet,
    /// All of it lies on the device.
    Ready,
    /// A newer page than the one that is open lies on the device and waits until the maker takes it.
    NewVersion,
}

/// Everything of this kind that the page knows.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct DeviceStatus {
    /// Whether it works without a network.
    pub offline: Offline,
    /// Whether the browser has promised to clear nothing by itself; nothing if it does not say.
    pub lasting: Option<bool>,
    /// The share of the room it gives that is taken, from 0 to 1; nothing if it does not say. Browsers round it, or
    /// blur it, so it is a hint and no measurement.
    pub taken: Option<f64>,
    /// When the workshop was last saved to a file in this browser, in milliseconds since 1970; nothing if never.
    pub saved: Option<f64>,
}

/// Something new about how the page stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum News {
    /// About working without a network.
    Offline(Offline),
    /// The browser has promised to clear nothing by itself, or has not.
    Lasting(bool),
    /// This share of the room is taken, from 0 to 1.
    Taken(f64),
    /// A file was saved at this time, in milliseconds since 1970.
    Saved(f64),
}

impl DeviceStatus {
    /// Takes news in. A page for which there was a newer one stays old until it is loaded anew, whatever is told then.
    pub fn hear(&mut self, news: News) {
        match news {
            News::Offline(_) if self.offline == Offline::NewVersion => {}
            News::Offline(offline) => self.offline = offline,
            News::Lasting(lasting) => self.lasting = Some(lasting),
            News::Taken(share) => self.taken = Some(share),
            News::Saved(time) => self.saved = Some(time),
        }
    }
}

/// What became of a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Saved {
    /// It lies where the maker chose, under this name.
    As(String),
    /// It was handed to the downloads of the browser under this name.
    Downloaded(String),
    /// No place was chosen for it.
    No,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_old_page_stays_old() {
        let mut standing = DeviceStatus::default();
        for offline in [Offline::Ready, Offline::NewVersion, Offline::Ready] {
            standing.hear(News::Offline(offline));
        }
        assert_eq!(standing.offline, Offline::NewVersion);
    }

    #[test]
    fn the_last_file_counts() {
        let mut standing = DeviceStatus::default();
        standing.hear(News::Saved(1.0));
        standing.hear(News::Saved(2.0));
        assert_eq!(standing.saved, Some(2.0));
    }
}
