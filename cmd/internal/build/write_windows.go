package build

// Access lists decide here, and only trying tells: a refusal then comes from
// the first file that is written, with nothing changed.
func writable(string) bool { return true }

// A volume mounted on a folder shows as a link, which is resolved before.
func otherDevice(string) bool { return false }
