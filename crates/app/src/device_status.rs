//! The status of the page on this device: whether it works offline, and how safe its data is.

/// The offline status.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Offline {
    /// The page does not work offline yet, or the browser does not support it.
    #[default]
    NotYet,
    /// The page is stored on the device.
    Ready,
    /// A newer version of the page is stored on the device and waits until the maker accepts it.
    NewVersion,
}

/// The known status of the page on this device.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct DeviceStatus {
    /// The offline status.
    pub offline: Offline,
    /// Whether the browser promised not to clear the data. `None` if it does not say.
    pub lasting: Option<bool>,
    /// The used share of the available storage, from 0 to 1. `None` if the browser does not say. Browsers
    /// round or blur it, so it is only a hint.
    pub taken: Option<f64>,
    /// When the workshop was last saved to a file in this browser, in milliseconds since 1970. `None` if
    /// never.
    pub saved: Option<f64>,
}

/// A change of the status.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum News {
    /// The offline status changed.
    Offline(Offline),
    /// The browser promised not to clear the data, or refused to.
    Lasting(bool),
    /// The used share of the storage, from 0 to 1.
    Taken(f64),
    /// A file was saved at this time, in milliseconds since 1970.
    Saved(f64),
}

impl DeviceStatus {
    /// Applies a change. Once a newer version is available, the page stays outdated until it is reloaded,
    /// whatever is reported later.
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

/// How a file was saved.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Saved {
    /// It was saved where the maker chose, under this name.
    As(String),
    /// It was passed to the browser's downloads under this name.
    Downloaded(String),
    /// The maker chose no location, so it was not saved.
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
