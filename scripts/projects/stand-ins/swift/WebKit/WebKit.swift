// What our Swift and Tauri's call of WebKit, after its public reference; none of it does anything.
@_exported import UIKit

open class UIScrollView: UIView {
  public enum ContentInsetAdjustmentBehavior: Int {
    case automatic, scrollableAxes, never, always
  }
  open var contentInsetAdjustmentBehavior: ContentInsetAdjustmentBehavior { get { fatalError() } set { fatalError() } }
}

open class WKWebView: UIView {
  open var scrollView: UIScrollView { fatalError() }
}
